/** Plans that were offered for reading and wait for a lead, the longest wait first. */
import { plural } from "#lib/plan/format.ts";
import type { PlanListEntry } from "#server/plans/list-plans.ts";
import { LocalTime } from "../_parts/local-time.tsx";
import styles from "./desk.module.css";
import { PlanLine } from "./plan-line.tsx";

interface WaitingProps {
  readonly title: string;
  readonly plans: readonly PlanListEntry[];
  readonly rooms: Readonly<Record<string, string>>;
}

export function WaitingPlans({ title, plans, rooms }: WaitingProps) {
  return (
    <section className={`${styles.group} ${styles.waiting}`}>
      <h2>{title}</h2>
      {plans.length === 0 ? <p className="quiet">Nothing is waiting for you.</p> : null}
      <ul className={`hung ${styles.lines}`}>
        {plans.map((plan) => (
          <PlanLine key={plan.id} plan={plan} href={`/plans/${plan.id}`} facts={<Facts plan={plan} rooms={rooms} />} />
        ))}
      </ul>
    </section>
  );
}

function Facts({ plan, rooms }: { plan: PlanListEntry; rooms: WaitingProps["rooms"] }) {
  const { handedIn } = plan;
  if (!handedIn) return null;
  return (
    <>
      {handedIn.byName}, <LocalTime at={handedIn.at} /> · {rooms[plan.roomId]} · <MustFix count={handedIn.mustFix} />
      {handedIn.reader ? <Reader reader={handedIn.reader} /> : null}
      {plan.openThreads > 0 ? ` · ${plural(plan.openThreads, "open thread")}` : ""}
      {handedIn.note ? <q className={styles.note}>{handedIn.note}</q> : null}
    </>
  );
}

/** Leads share what waits: who has taken one up is said to the others. */
function Reader({
  reader: { name, since },
}: {
  reader: NonNullable<NonNullable<PlanListEntry["handedIn"]>["reader"]>;
}) {
  return (
    <>
      {` · being read by ${name} since `}
      <LocalTime at={since} />
    </>
  );
}

function MustFix({ count }: { count: number | null }) {
  if (count === null) return <span className="look">not checked yet</span>;
  if (count === 0) return <span>nothing to fix</span>;
  return <strong className="must">{count} to fix</strong>;
}
