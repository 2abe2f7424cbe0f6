"use client";
/** What holds the chosen item in place when its block is reordered: the move above it, and what it comes after. */
import { SelectField } from "#app/_parts/choice.tsx";
import { placedName } from "#app/_session/placed-name.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { aboveOf, comesAfter, mayComeAfter, tieState } from "#lib/plan/ties.ts";
import styles from "../_session/hold.module.css";
import { leave, setAfter, setTied } from "./hold-acts.ts";
import { NO_ABOVE } from "./hold-words.ts";

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
            {`Tied to ${state.apart.map((other) => placedName(plan, other)).join(" and ")}, which is elsewhere now.`}
          </span>
          {!readOnly && (
            <button type="button" className="button" onClick={() => leave(session, item)}>
              Remove the tie
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
    { value: "", label: earlier.length > 0 ? "choose another move of the block" : "choose a move of the block" },
    ...choices.map((other) => ({ value: other.id, label: placedName(plan, other) })),
  ];
  return (
    <div className={styles.after}>
      {earlier.length > 0 && (
        <ul className="bare" aria-label="Comes after">
          {earlier.map(({ item: other, holds }) => (
            <Earlier key={other.id} {...{ session, plan, item, readOnly, other, holds }} />
          ))}
        </ul>
      )}
      {!readOnly && choices.length > 0 && (
        <SelectField
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

/** One item that this one comes after; `holds`: it does so now. */
function Earlier(props: HoldProps & { readonly other: PlanItem; readonly holds: boolean }) {
  const { session, plan, item, readOnly, other, holds } = props;
  const name = placedName(plan, other);
  return (
    <li className={`light ${styles.row}`}>
      <span>
        Comes after {name}.{!holds && <span className={styles.amiss}> It comes before it now.</span>}
      </span>
      {!readOnly && (
        <button
          type="button"
          className="button"
          aria-label={`Need not come after ${name}`}
          onClick={() => setAfter(session, item, other, false)}
        >
          Remove
        </button>
      )}
    </li>
  );
}
