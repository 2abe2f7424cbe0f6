"use client";
/** A new class, added when its form is sent. */
import { type FormEvent, useEffect, useRef, useState } from "react";
import type { MonthSlot } from "#lib/month/types.ts";
import type { SlotChange } from "#lib/programme/write.ts";
import { newId } from "../_parts/new-id.ts";
import { ClassFields } from "./class-fields.tsx";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";

export function NewClass({ desk, date }: { readonly desk: MonthDesk; readonly date: string }) {
  const form = useRef<HTMLFormElement>(null);
  const [slot, setSlot] = useState<MonthSlot>(() => firstValues(desk, date));
  const latest = useRef(slot);
  const [problem, setProblem] = useState("");
  const change = (part: SlotChange) => {
    latest.current = changed(latest.current, part);
    setSlot(latest.current);
  };
  useEffect(() => form.current?.querySelector<HTMLElement>("[data-first]")?.focus(), []);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    // A theme counts once its field is left, which the Enter key does not do.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    const { current } = latest;
    const refused = desk.acts.add(current);
    setProblem(refused);
    if (refused !== "") return;
    desk.choose({ panel: null, at: { date: current.date, slot: current.id } });
  };
  return (
    <form ref={form} className={styles.form} onSubmit={submit}>
      <ClassFields desk={desk} slot={slot} first onChange={change} />
      <button type="submit" className="button button-strong">
        Add the class
      </button>
      {problem && <p className="problem">{problem}</p>}
    </form>
  );
}

/** As the class of that day before it, where there is one: a studio's classes are alike. */
function firstValues({ month: { file, look }, choice }: MonthDesk, date: string): MonthSlot {
  const like = look.slots
    .map(({ slot }) => slot)
    .filter((slot) => slot.date === date)
    .at(-1);
  return {
    id: newId(),
    date,
    start: like?.start ?? "18:00",
    minutes: like?.minutes ?? 45,
    room: like?.room ?? choice.rooms[0] ?? Object.keys(file.rooms)[0] ?? null,
    ...(choice.regulars === null ? {} : { regulars: [choice.regulars] }),
  };
}

function changed(slot: MonthSlot, { people, ...change }: SlotChange): MonthSlot {
  const { people: was, ...rest } = slot;
  const now = people === undefined ? was : (people ?? undefined);
  return { ...rest, ...change, ...(now === undefined ? {} : { people: now }) };
}
