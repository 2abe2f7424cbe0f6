"use client";
/** Days on which the pattern gives no class. */
import { type FormEvent, useState } from "react";
import { dayWords } from "#lib/formats/dates.ts";
import { MOST_HOLIDAY_NAME } from "#lib/programme/read-lists.ts";
import { setHoliday } from "#lib/programme/write-lists.ts";
import { DateField } from "./coaches-panel.tsx";
import { Labelled } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";

/** Long because: the list and the form that adds to it are one. */
export function HolidaysPanel({ desk: { month, acts, formats: f } }: { readonly desk: MonthDesk }) {
  const [date, setDate] = useState(month.file.dates.from);
  const [name, setName] = useState("");
  const add = (event: FormEvent) => {
    event.preventDefault();
    if (
      acts.run(
        (w) => setHoliday(w, date, name.trim() || "Closed"),
        `${name.trim() || "Closed"} on ${dayWords(date, f)}.`,
      )
    )
      setName("");
  };
  return (
    <>
      <p className="quiet small">
        The pattern gives no class on these days. A class that stands there by itself stays, and is told of.
      </p>
      <ul className={styles.rows}>
        {Object.entries(month.state.holidays).map(([day, words]) => (
          <li key={day} className="spread">
            <span className={styles.long}>
              {dayWords(day, f)}: {words}
            </span>
            {month.writes && (
              <button
                type="button"
                className="act"
                onClick={() => acts.run((w) => setHoliday(w, day, null), `No holiday on ${dayWords(day, f)} any more.`)}
              >
                Take out<span className="visually-hidden"> {dayWords(day, f)}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
      {month.writes && (
        <form className={styles.form} onSubmit={add}>
          <div className={styles.two}>
            <DateField label="Day" value={date} onChange={setDate} />
            <Labelled label="What it is">
              {(id) => (
                <input
                  id={id}
                  value={name}
                  maxLength={MOST_HOLIDAY_NAME}
                  onChange={(event) => setName(event.target.value)}
                />
              )}
            </Labelled>
          </div>
          <button type="submit" className="button">
            Add the holiday
          </button>
        </form>
      )}
    </>
  );
}
