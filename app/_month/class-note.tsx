"use client";
/** The team's note of a class: one text for all who type in it. */
import { useLayoutEffect, useRef, useState } from "react";
import type { MonthSlot } from "#lib/month/types.ts";
import { openSlotNote, slotNoteText } from "#lib/programme/write.ts";
import { SharedText } from "../_parts/shared-text.tsx";
import { Labelled } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import { SLOT_WORDS } from "./month-words.ts";

export function ClassNote({ desk: { session, month }, slot }: { readonly desk: MonthDesk; readonly slot: MonthSlot }) {
  const field = useRef<HTMLDivElement>(null);
  const [made, setMade] = useState(0);
  // The button that had the focus has gone for the field.
  useLayoutEffect(() => {
    if (made > 0) field.current?.querySelector("textarea")?.focus();
  }, [made]);
  const text = slotNoteText(session.doc, slot.id);
  if (!text) {
    // Only reading it must not write: a class of the pattern gets a text of its own when somebody wants to type.
    if (!month.writes) return slot.note ? <p>{slot.note}</p> : null;
    const make = () => {
      openSlotNote(session.writer, slot.id);
      setMade((n) => n + 1);
    };
    return (
      <div>
        {slot.note && <p>{slot.note}</p>}
        <button type="button" className="text-button" onClick={make}>
          {slot.note ? "Write a note of its own" : "Add a note"}
        </button>
      </div>
    );
  }
  return (
    <div ref={field}>
      <Labelled label={SLOT_WORDS.note}>
        {(id) => <SharedText host={session} text={text} id={id} rows={2} readOnly={!month.writes} />}
      </Labelled>
    </div>
  );
}
