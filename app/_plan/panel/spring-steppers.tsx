"use client";
/** How many of each of the machine's springs are on, as coils, with a button for one less and one for one more. */
import { countWord } from "#lib/plan/format.ts";
import type { Equipment, MoveItem, Spring } from "#lib/plan/schema.ts";
import { CoilMark, drawnSprings } from "../../_parts/coils/coil.tsx";
import { coilWeight } from "../../_parts/coils/coil-weight.ts";
import styles from "../../_parts/panel.module.css";
import { setSpringCount } from "../../_session/acts.ts";
import type { PlanSession } from "../../_session/session.ts";
import { ITEM_WORDS, strangeSpring } from "./panel-words.ts";

interface SteppersProps {
  readonly session: PlanSession;
  readonly item: MoveItem;
  readonly equipment: Equipment;
  readonly disabled: boolean;
}

export function SpringSteppers({ session, item, equipment, disabled }: SteppersProps) {
  const strange = Object.entries(item.springs).filter(
    ([id, n]) => n > 0 && !equipment.springs.some((s) => s.id === id),
  );
  return (
    <fieldset className={styles.springs} disabled={disabled}>
      <legend>{ITEM_WORDS.springs}</legend>
      {equipment.springs.map((spring) => (
        <Stepper key={spring.id} spring={spring} {...{ session, item, equipment }} />
      ))}
      {strange.map(([id, n]) => (
        <p key={id} className="problem">
          {strangeSpring(id, n)}{" "}
          <button type="button" className="text-button" onClick={() => setSpringCount(session, item.id, id, 0)}>
            {ITEM_WORDS.takeSpringOff}
          </button>
        </p>
      ))}
    </fieldset>
  );
}

function Stepper({ session, item, equipment, spring }: Omit<SteppersProps, "disabled"> & { spring: Spring }) {
  const on = item.springs[spring.id] ?? 0;
  const set = (n: number) => setSpringCount(session, item.id, spring.id, n);
  const length = drawnSprings(Math.max(spring.count, on));
  const coils = Array.from({ length }, (_, i) => ({ key: `${spring.id}${i}`, on: i < on }));
  const tooMany = on > spring.count;
  return (
    <div className={styles.spring}>
      <span className={styles.springName}>
        {spring.label}
        <span className={styles.springCount} data-wrong={tooMany || undefined} aria-live="polite">
          {`${on === 0 ? "none" : countWord(on)} of ${spring.count}`}
        </span>
      </span>
      <button
        type="button"
        className="square-button"
        aria-label={`One ${spring.label} less`}
        disabled={on === 0}
        onClick={() => set(on - 1)}
      >
        −
      </button>
      <span className={styles.springCoils}>
        {coils.map((coil) => (
          <CoilMark key={coil.key} weight={coilWeight(spring, equipment.springs)} off={!coil.on} />
        ))}
      </span>
      <button
        type="button"
        className="square-button"
        aria-label={`One ${spring.label} more`}
        disabled={on >= spring.count}
        onClick={() => set(on + 1)}
      >
        +
      </button>
    </div>
  );
}
