/** Signed classes for those who do not write: the sheet for the wall and the tracks for a recording. */
import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import type { SignedPlan } from "#server/plans/editions.ts";
import { Moment } from "../_parts/moment.tsx";
import { lengthWords } from "../_parts/words.ts";
import styles from "./desk.module.css";
import { PlanLine } from "./plan-line.tsx";

interface SignedPlansProps {
  readonly plans: readonly SignedPlan[];
  readonly rooms: Readonly<Record<string, string>>;
}

export function SignedPlans({ plans, rooms }: SignedPlansProps) {
  return (
    <section className={styles.group}>
      <h2>Signed classes</h2>
      {plans.length === 0 ? <p className="quiet">Nothing is signed off yet.</p> : null}
      <ul className={`hung ${styles.lines}`}>
        {plans.map((plan) => (
          <PlanLine
            key={plan.planId}
            plan={{
              id: plan.planId,
              title: plan.title,
              state: "signed-off",
              edition: plan.number,
              lengthSeconds: plan.lengthSeconds,
              ownerName: plan.signedByName,
            }}
            facts={
              <>
                edition {plan.number} · {rooms[plan.roomId]} · signed by {plan.signedByName},{" "}
                <Moment at={plan.signedAt} /> · {lengthWords(plan.lengthSeconds)}
                {plan.damaged ? <strong> · damaged: not what was signed, served nowhere</strong> : null}
                {plan.withdrawn ? <strong> · {withdrawnWords(plan.withdrawn)}</strong> : null}
              </>
            }
          >
            <a className="button" href={`/editions/${plan.planId}/${plan.number}/print`}>
              Print sheet<span className="visually-hidden"> of {plan.title}</span>
            </a>
            <a className="button" href={`/editions/${plan.planId}/${plan.number}/crew`}>
              Crew sheet<span className="visually-hidden"> of {plan.title}</span>
            </a>
            <a className="button" href={`/editions/${plan.planId}/${plan.number}/classes`}>
              Classes taught<span className="visually-hidden"> from {plan.title}</span>
            </a>
            <a className="button" href={`/api/editions/${plan.planId}/${plan.number}/cues.vtt`} download>
              Cue track<span className="visually-hidden"> of {plan.title}</span>
            </a>
            <a className="button" href={`/api/editions/${plan.planId}/${plan.number}/chapters.vtt`} download>
              Chapters<span className="visually-hidden"> of {plan.title}</span>
            </a>
          </PlanLine>
        ))}
      </ul>
    </section>
  );
}
