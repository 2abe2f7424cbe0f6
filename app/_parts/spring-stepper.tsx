"use client";
/** How many of one spring are on, as coils, with a button for one less and one for one more. */
import { countWord } from "#lib/plan/format.ts";
import type { Equipment, Spring } from "#lib/plan/schema.ts";
import { CoilMark, drawnSprings } from "./coils/coil.tsx";
import { coilWeight } from "./coils/coil-weight.ts";
import styles from "./panel.module.css";

interface SpringStepperProps {
  readonly spring: Spring;
  readonly equipment: Equipment;
  readonly on: number;
  readonly onSet: (count: number) => void;
}

export function SpringStepper({ spring, equipment, on, onSet }: SpringStepperProps) {
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
        onClick={() => onSet(on - 1)}
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
        onClick={() => onSet(on + 1)}
      >
        +
      </button>
    </div>
  );
}
