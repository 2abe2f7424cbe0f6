"use client";
import { useRouter } from "next/navigation";
import type { DeletedPlan } from "#server/plans/list-plans.ts";
import { Moment } from "../_parts/moment.tsx";
import { Problem } from "../_parts/problem.tsx";
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
      <Problem say={sending.problem} />
      <ul className={styles.plain}>
        {plans.map((plan) => (
          <li key={plan.id}>
            <span>
              {plan.title || "Untitled plan"}{" "}
              <span className="quiet small">
                deleted <Moment at={plan.deletedAt} />
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
