"use client";
/** A class that was taken out while it was open: who took it out, its words, and the way back. */
import { useLayoutEffect, useRef, useState } from "react";
import { KeptWords } from "#app/_parts/kept-words.tsx";
import { slotTakenOutBy } from "#lib/programme/read.ts";
import type { MonthDesk } from "./month-desk.ts";
import { slotGoneWords } from "./month-words.ts";
import styles from "./panel.module.css";

export function GoneClass({
  desk: { session, month, acts },
  slotId,
}: {
  readonly desk: MonthDesk;
  readonly slotId: string;
}) {
  const [problem, setProblem] = useState("");
  const says = useRef<HTMLParagraphElement>(null);
  // The field that had the focus has gone with the class. Further keys must not press a button.
  useLayoutEffect(() => says.current?.focus(), []);
  const by = slotTakenOutBy(session.doc, slotId);
  const slot = month.deleted.find((gone) => gone.slot.id === slotId)?.slot;
  const words = [slot?.theme, slot?.note].filter((text) => text !== undefined && text.trim() !== "").join("\n");
  return (
    <div className={styles.form}>
      <p ref={says} tabIndex={-1} role="alert">
        {slotGoneWords(by === undefined ? "Somebody" : session.names.who(by), words !== "")}
      </p>
      {words !== "" && <KeptWords label="Words of the class" words={words} />}
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      {month.writes && slot && (
        <p>
          <button type="button" className="button button-strong" onClick={() => setProblem(acts.bringBack(slot))}>
            Put back
          </button>
        </p>
      )}
    </div>
  );
}
