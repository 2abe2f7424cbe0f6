"use client";
/** Classes that were taken out of the month, to be put back. */
import type { Slot } from "#lib/programme/layout.ts";
import { putBackSlot } from "#lib/programme/write.ts";
import styles from "./month.module.css";
import type { MonthSession } from "./month-session.ts";
import type { MonthSnapshot } from "./month-types.ts";
import { slotLine, slotName } from "./month-words.ts";

/** Taken-out classes listed at most. */
const LISTED = 12;

export function TakenOutSlots({ session, month }: { readonly session: MonthSession; readonly month: MonthSnapshot }) {
  if (month.deleted.length === 0 || !month.writes) return null;
  return (
    <section className={styles.taken}>
      <h2>Taken out of the month</h2>
      <ul>
        {month.deleted.slice(0, LISTED).map(({ slot }) => (
          <li key={slot.id}>
            {slotLine(slot)}
            <button type="button" className="act" onClick={() => putBack(session, slot)}>
              Put back<span className="visually-hidden"> {slotLine(slot)}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function putBack(session: MonthSession, slot: Slot): void {
  if (session.act((w) => putBackSlot(w, slot.id))) session.say(`Put back: ${slotName(slot)}.`);
}
