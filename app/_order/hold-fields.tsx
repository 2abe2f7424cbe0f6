"use client";
/** What holds the chosen item to its place when a block is put in order: the one above it, and what it comes after. */
import { Select } from "#app/_parts/choice.tsx";
import { placedName } from "#app/_session/placed-name.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { aboveOf, comesAfter, mayComeAfter, tieState } from "#lib/plan/ties.ts";
import styles from "../_session/hold.module.css";
import { leave, setAfter, setTied } from "./hold-acts.ts";

interface HoldProps {
  readonly session: PlanSession;
  readonly plan: Plan;
  readonly item: MoveItem;
  readonly readOnly: boolean;
}

export function HoldFields(props: HoldProps) {
  return (
    <div className={styles.hold}>
      <h3>Place in its block</h3>
      <Tie {...props} />
      <After {...props} />
    </div>
  );
}

const NO_ABOVE = {
  pause: "A pause stands above it: there is nothing to stay next to.",
  heading: "It is the first of its block: there is nothing to stay next to.",
  top: "It is the first of the class: there is nothing to stay next to.",
} as const;

function Tie({ session, plan, item, readOnly }: HoldProps) {
  const above = aboveOf(plan, item);
  const state = tieState(plan, item);
  return (
    <div>
      {above.is === "move" ? (
        <label className="check">
          <input
            type="checkbox"
            checked={above.tied}
            disabled={readOnly}
            onChange={(event) => setTied(session, item, above.item, event.target.checked)}
          />
          <span>
            Stays next to the one above <span className="quiet">({placedName(plan, above.item)})</span>
          </span>
        </label>
      ) : (
        <p className="small quiet">{NO_ABOVE[above.is]}</p>
      )}
      {state?.below && <p className="small quiet">{placedName(plan, state.below)} stays right below it.</p>}
      {state && state.apart.length > 0 && (
        <div className={`light ${styles.row}`}>
          <span className={styles.amiss}>
            {`Tied to ${state.apart.map((other) => placedName(plan, other)).join(" and ")}, which stands elsewhere now.`}
          </span>
          {!readOnly && (
            <button type="button" className="button" onClick={() => leave(session, item)}>
              Leave the tie
            </button>
          )}
        </div>
      )}
    </div>
  );
}

function After({ session, plan, item, readOnly }: HoldProps) {
  const earlier = comesAfter(plan, item);
  const choices = mayComeAfter(plan, item);
  const options = [
    { value: "", label: earlier.length > 0 ? "another move of the block" : "any move of the block" },
    ...choices.map((other) => ({ value: other.id, label: placedName(plan, other) })),
  ];
  return (
    <div className={styles.after}>
      {earlier.length > 0 && (
        <ul className="bare" aria-label="Comes after">
          {earlier.map(({ item: other, holds }) => (
            <li key={other.id} className={`light ${styles.row}`}>
              <span>
                Comes after {placedName(plan, other)}.
                {!holds && <span className={styles.amiss}> It stands before it now.</span>}
              </span>
              {!readOnly && (
                <button
                  type="button"
                  className="button"
                  aria-label={`Need not come after ${placedName(plan, other)}`}
                  onClick={() => setAfter(session, item, other, false)}
                >
                  Remove
                </button>
              )}
            </li>
          ))}
        </ul>
      )}
      {!readOnly && choices.length > 0 && (
        <Select
          label="Comes after"
          value=""
          options={options}
          onChoose={(id) => {
            const other = choices.find((choice) => choice.id === id);
            if (other) setAfter(session, item, other, true);
          }}
        />
      )}
    </div>
  );
}
