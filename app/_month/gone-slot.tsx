"use client";
/** A class that was taken out while its dialog was open: who took it out, its words, and the way back. */
import { useLayoutEffect, useRef } from "react";
import { KeptWords } from "#app/_parts/kept-words.tsx";
import { slotTakenOutBy } from "#lib/programme/read.ts";
import { putBackSlot } from "#lib/programme/write.ts";
import styles from "./month.module.css";
import type { MonthSession } from "./month-session.ts";
import type { MonthSnapshot } from "./month-types.ts";
import { slotGoneWords } from "./month-words.ts";

interface GoneSlotProps {
  readonly session: MonthSession;
  readonly month: MonthSnapshot;
  readonly slotId: string;
}

export function GoneSlot({ session, month, slotId }: GoneSlotProps) {
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
      {month.writes && (
        <p>
          <button
            type="button"
            className="button button-strong"
            onClick={() => session.act((w) => putBackSlot(w, slotId))}
          >
            Put back
          </button>
        </p>
      )}
    </div>
  );
}
