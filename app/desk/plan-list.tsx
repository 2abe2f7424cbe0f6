/** One group of plans on the desk, each with its facts and what can be done with it. */
import type { ReactNode } from "react";
import { plural } from "#lib/plan/format.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { PlanListEntry } from "#server/plans/list-plans.ts";
import { LocalTime } from "../_parts/local-time.tsx";
import { NothingYet } from "../_parts/nothing-yet.tsx";
import { STATE_WORDS } from "../_parts/state-words.ts";
import styles from "./desk.module.css";
import { PlanActs } from "./plan-acts.tsx";
import { PlanLine } from "./plan-line.tsx";
import { ShareAct } from "./share-act.tsx";

interface PlanListProps {
  readonly title: string;
  /** What to say and do where there is none. */
  readonly empty: ReactNode;
  readonly plans: readonly PlanListEntry[];
  readonly rooms: Readonly<Record<string, string>>;
  readonly me: string;
}

export function PlanList({ title, empty, plans, rooms, me }: PlanListProps) {
  return (
    <section className={styles.group}>
      <h2>{title}</h2>
      {plans.length === 0 ? <NothingYet>{empty}</NothingYet> : null}
      <ul className={`hung ${styles.lines}`}>
        {plans.map((plan) => (
          <PlanLine
            key={plan.id}
            plan={plan}
            href={`/plans/${plan.id}`}
            facts={<Facts plan={plan} rooms={rooms} me={me} />}
          >
            <PlanActs
              id={plan.id}
              title={planTitle(plan.title)}
              mayDelete={plan.ownerId === me}
              signed={plan.edition > 0}
            />
            {plan.ownerId === me && <ShareAct id={plan.id} title={planTitle(plan.title)} team={plan.team} />}
          </PlanLine>
        ))}
      </ul>
    </section>
  );
}

function Facts({ plan, rooms, me }: { plan: PlanListEntry; rooms: PlanListProps["rooms"]; me: string }) {
  const words = [
    plan.withdrawn
      ? `${STATE_WORDS[plan.state]}, edition ${plan.edition} withdrawn by ${plan.withdrawn.byName}: ${plan.withdrawn.reason}`
      : plan.edition > 0 && plan.state === "signed-off"
        ? `signed off, edition ${plan.edition}`
        : plan.edition > 0
          ? `${STATE_WORDS[plan.state]}, edition ${plan.edition} is signed`
          : STATE_WORDS[plan.state],
    plan.ownerId === me ? null : plan.ownerName,
    rooms[plan.roomId],
    plan.team ? "team plan" : null,
    plan.openThreads > 0 ? `${plural(plan.openThreads, "open thread")}` : null,
    plan.writes ? null : "read only",
  ];
  return (
    <>
      {words.filter((word) => word).join(" · ")} · changed <LocalTime at={plan.updatedAt} />
    </>
  );
}
