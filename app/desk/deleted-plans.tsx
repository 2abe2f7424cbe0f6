"use client";
/** Plans of one's own that were deleted, to bring back. */
import { useRouter } from "next/navigation";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { DeletedPlan } from "#server/plans/list-plans.ts";
import { LocalTime } from "../_parts/local-time.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./desk.module.css";

export function DeletedPlans({ plans }: { readonly plans: readonly DeletedPlan[] }) {
  const router = useRouter();
  const sending = useSend();
  const bringBack = async (id: string) => {
    if ((await sending.run("POST", `/api/plans/${id}/restore`, {})) !== undefined) router.refresh();
  };
  return (
    <section className={styles.group}>
      <h2>Deleted</h2>
      <ProblemLine say={sending.problem} />
      <ul className={styles.plain}>
        {plans.map((plan) => (
          <li key={plan.id}>
            <span>
              {planTitle(plan.title)}{" "}
              <span className="quiet small">
                deleted <LocalTime at={plan.deletedAt} />
              </span>
            </span>
            <button type="button" className="act" onClick={() => bringBack(plan.id)} aria-disabled={sending.busy}>
              Bring back<span className="visually-hidden"> {plan.title}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
