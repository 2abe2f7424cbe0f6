"use client";
/** When each coach can teach, and when they are away. */
import { useState } from "react";
import type { Writer } from "#lib/doc/write.ts";
import type { AwayTime, FreeTime } from "#lib/month/types.ts";
import { type KeyedTime, readCoachTimeKeys, setCoachTime } from "#lib/programme/write-lists.ts";
import { newId } from "../_parts/new-id.ts";
import { Labelled } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";
import { useGoToAdded } from "./use-go-to-added.ts";
import { WeekdayChoice } from "./weekday-choice.tsx";

/** Long because: one form, its hours and its days away, read from top to bottom. */
export function CoachesPanel({ desk }: { readonly desk: MonthDesk }) {
  const { month, session, acts } = desk;
  const all = Object.entries(month.file.coaches);
  const [coach, setCoach] = useState(all[0]?.[0] ?? "");
  const times = readCoachTimeKeys(session.doc, coach);
  const { from } = month.file.dates;
  const [box, goTo] = useGoToAdded<HTMLFieldSetElement>();
  const add = (write: (w: Writer, key: string) => void) => {
    const key = newId();
    if (acts.run((w) => write(w, key))) goTo(key);
  };
  return (
    <fieldset ref={box} className={styles.form} disabled={!month.writes}>
      <Labelled label="Coach">
        {(id) => (
          <select id={id} value={coach} onChange={(event) => setCoach(event.target.value)}>
            {all.map(([one, { name }]) => (
              <option key={one} value={one}>
                {name}
              </option>
            ))}
          </select>
        )}
      </Labelled>
      <h3>Can teach</h3>
      {times.free.length === 0 && <p className="quiet">At any time.</p>}
      <ul className={styles.rows}>
        {times.free.map((one) => (
          <FreeRow key={one.key} desk={desk} coach={coach} one={one} />
        ))}
      </ul>
      <button
        type="button"
        className="button"
        onClick={() =>
          add((w, key) => setCoachTime(w, coach, "free", key, { days: [1, 2, 3, 4, 5], from: "07:00", to: "21:00" }))
        }
      >
        Add hours
      </button>
      <h3>Away</h3>
      <ul className={styles.rows}>
        {times.away.map((one) => (
          <AwayRow key={one.key} desk={desk} coach={coach} one={one} />
        ))}
      </ul>
      <button
        type="button"
        className="button"
        onClick={() => add((w, key) => setCoachTime(w, coach, "away", key, { from, to: from }))}
      >
        Add days away
      </button>
    </fieldset>
  );
}

interface RowProps<T> {
  readonly desk: MonthDesk;
  readonly coach: string;
  readonly one: KeyedTime<T>;
}

function FreeRow({ desk: { acts }, coach, one: { key, time } }: RowProps<FreeTime>) {
  const set = (part: Partial<FreeTime>) => {
    const next = { ...time, ...part };
    if (next.from < next.to) acts.run((w) => setCoachTime(w, coach, "free", key, next));
  };
  return (
    <li data-row={key}>
      <WeekdayChoice legend="On" days={time.days} onChange={(days) => set({ days: [...days] })} />
      <div className={styles.two}>
        <TimeField label="From" value={time.from} onChange={(from) => set({ from })} />
        <TimeField label="Until" value={time.to === "24:00" ? "23:59" : time.to} onChange={(to) => set({ to })} />
      </div>
      <button type="button" className="act" onClick={() => acts.run((w) => setCoachTime(w, coach, "free", key, null))}>
        Remove these hours
      </button>
    </li>
  );
}

const later = (a: string, b: string): string => (a > b ? a : b);

function AwayRow({ desk: { acts }, coach, one: { key, time } }: RowProps<AwayTime>) {
  const set = (part: Partial<AwayTime>) => {
    const next = { ...time, ...part };
    if (next.from <= next.to) acts.run((w) => setCoachTime(w, coach, "away", key, next));
  };
  return (
    <li data-row={key}>
      <div className={styles.three}>
        <DateField label="First day" value={time.from} onChange={(from) => set({ from, to: later(from, time.to) })} />
        <DateField label="Last day" value={time.to} onChange={(to) => set({ to })} />
        <Labelled label="Why">
          {(id) => (
            <input
              id={id}
              key={time.why}
              defaultValue={time.why ?? ""}
              maxLength={120}
              onBlur={(event) => event.target.value !== (time.why ?? "") && set({ why: event.target.value })}
            />
          )}
        </Labelled>
      </div>
      <button type="button" className="act" onClick={() => acts.run((w) => setCoachTime(w, coach, "away", key, null))}>
        Remove these days
      </button>
    </li>
  );
}

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

function TimeField({ label, value, onChange }: FieldProps) {
  return (
    <Labelled label={label}>
      {(id) => (
        <input
          id={id}
          type="time"
          value={value}
          onChange={(event) => event.target.value !== "" && onChange(event.target.value)}
        />
      )}
    </Labelled>
  );
}

export function DateField({ label, value, onChange }: FieldProps) {
  return (
    <Labelled label={label}>
      {(id) => (
        <input
          id={id}
          type="date"
          value={value}
          onChange={(event) => event.target.value !== "" && onChange(event.target.value)}
        />
      )}
    </Labelled>
  );
}
