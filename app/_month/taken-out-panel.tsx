"use client";
/** Classes that were taken out of the month, to be put back. */
import { useState } from "react";
import type { MonthDesk } from "./month-desk.ts";
import { slotLine } from "./month-words.ts";
import styles from "./panel.module.css";

export function TakenOutPanel({ desk: { month, acts, formats } }: { readonly desk: MonthDesk }) {
  const [problem, setProblem] = useState("");
  if (month.deleted.length === 0) return <p className="quiet">No class has been taken out.</p>;
  return (
    <>
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      <ul className={styles.rows}>
        {month.deleted.map(({ slot }) => (
          <li key={slot.id} className="spread">
            <span>{slotLine(slot, formats)}</span>
            {month.writes && (
              <button type="button" className="act" onClick={() => setProblem(acts.bringBack(slot))}>
                Put back<span className="visually-hidden"> {slotLine(slot, formats)}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
