/** Signed editions for those who do not write: the sheet for the wall and the tracks for a recording. */
import { WithdrawnText } from "#app/_parts/reader-words.tsx";
import type { SignedPlan } from "#server/editions/editions.ts";
import { LocalTime } from "../_parts/local-time.tsx";
import { NothingYet } from "../_parts/nothing-yet.tsx";
import styles from "./desk.module.css";
import { PlanLine } from "./plan-line.tsx";

interface SignedPlansProps {
  readonly plans: readonly (SignedPlan & { readonly strip: string | null })[];
  readonly rooms: Readonly<Record<string, string>>;
}

/** Long because: one list, with all that its lines say. */
export function SignedPlans({ plans, rooms }: SignedPlansProps) {
  return (
    <section className={styles.group}>
      <h2>Signed editions</h2>
      {plans.length === 0 ? <NoneSigned /> : null}
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
              strip: plan.strip,
              ownerName: plan.signedByName,
            }}
            facts={
              <>
                edition {plan.number} · {rooms[plan.roomId]} · signed by {plan.signedByName},{" "}
                <LocalTime at={plan.signedAt} />
                {plan.damaged ? (
                  <strong> · damaged: it is not what was signed, so it is not used anywhere</strong>
                ) : null}
                {plan.withdrawn ? (
                  <strong>
                    {" "}
                    · <WithdrawnText of={plan.withdrawn} />
                  </strong>
                ) : null}
              </>
            }
          >
            <Ways plan={plan} />
          </PlanLine>
        ))}
      </ul>
    </section>
  );
}

const NoneSigned = () => (
  <NothingYet>
    <p>
      <b>No plan is signed off yet.</b> Once a lead signs one, its print sheet, crew sheet and tracks are here.
    </p>
  </NothingYet>
);

function Ways({ plan: { planId, number, title } }: { readonly plan: SignedPlan }) {
  const edition = `${planId}/${number}`;
  return (
    <>
      <a className="act" href={`/editions/${edition}/print`}>
        Print sheet<span className="visually-hidden"> of {title}</span>
      </a>
      <a className="act" href={`/editions/${edition}/crew`}>
        Crew sheet<span className="visually-hidden"> of {title}</span>
      </a>
      <a className="act" href={`/editions/${edition}/classes`}>
        Classes taught<span className="visually-hidden"> from {title}</span>
      </a>
      <a className="act" href={`/editions/${planId}`}>
        All editions<span className="visually-hidden"> of {title}</span>
      </a>
      <a className="act" href={`/api/editions/${edition}/cues.vtt`} download>
        Cue track<span className="visually-hidden"> of {title}</span>
      </a>
      <a className="act" href={`/api/editions/${edition}/chapters.vtt`} download>
        Chapters<span className="visually-hidden"> of {title}</span>
      </a>
    </>
  );
}
