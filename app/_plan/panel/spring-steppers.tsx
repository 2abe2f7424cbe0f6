"use client";
/** How many of each of the machine's springs are on, and those that it does not have. */
import type { Equipment, MoveItem } from "#lib/plan/schema.ts";
import styles from "../../_parts/panel.module.css";
import { SpringStepper } from "../../_parts/spring-stepper.tsx";
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
        <SpringStepper
          key={spring.id}
          {...{ spring, equipment }}
          on={item.springs[spring.id] ?? 0}
          onSet={(n) => setSpringCount(session, item.id, spring.id, n)}
        />
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
