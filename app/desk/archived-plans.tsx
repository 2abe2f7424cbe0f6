"use client";
/** Archived plans. They can be read, and their editions stay on the devices until a lead withdraws them. */
import Link from "next/link";
import { useRouter } from "next/navigation";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { ArchivedPlan } from "#server/plans/list-plans.ts";
import { LocalTime } from "../_parts/local-time.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./desk.module.css";

export function ArchivedPlans({ plans }: { readonly plans: readonly ArchivedPlan[] }) {
  const router = useRouter();
  const sending = useSend();
  const bringBack = async (id: string) => {
    const done = await sending.run("POST", `/api/plans/${id}/archive`, { archived: false });
    if (done !== undefined) router.refresh();
  };
  return (
    <section className={styles.group}>
      <h2>Archived</h2>
      <p className="quiet">A signed edition stays on the devices until a lead withdraws it.</p>
      <ProblemLine say={sending.problem} />
      <ul className={styles.plain}>
        {plans.map((plan) => (
          <li key={plan.id}>
            <span>
              <Link href={`/plans/${plan.id}`}>{planTitle(plan.title)}</Link>{" "}
              <span className="quiet small">
                {plan.edition > 0 ? `edition ${plan.edition}${plan.withdrawn ? " withdrawn" : " signed"}, ` : ""}
                {plan.ownerName}, archived <LocalTime at={plan.archivedAt} />
              </span>
            </span>
            {plan.mayReturn ? (
              <button type="button" className="act" onClick={() => bringBack(plan.id)} aria-disabled={sending.busy}>
                Bring back<span className="visually-hidden"> {plan.title}</span>
              </button>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
