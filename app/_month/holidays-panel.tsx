"use client";
/** Days on which the pattern gives no class. */
import { type FormEvent, useEffect, useRef, useState } from "react";
import { showFound } from "#app/_parts/show-found.ts";
import { dayWords } from "#lib/formats/dates.ts";
import { MOST_HOLIDAY_NAME } from "#lib/programme/read-lists.ts";
import { setHoliday } from "#lib/programme/write-lists.ts";
import { DateField } from "./coaches-panel.tsx";
import { Labelled } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";

/** Long because: the list and the form that adds to it are one. */
export function HolidaysPanel({ desk }: { readonly desk: MonthDesk }) {
  const { month, acts, formats: f } = desk;
  const list = useLedTo(desk);
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
      <ul ref={list} className={styles.rows}>
        {Object.entries(month.state.holidays).map(([day, words]) => (
          <li key={day} className="spread" data-holiday={day} tabIndex={-1}>
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

/** To the holiday that somebody was led to, as soon as the month has it; marks it for a moment. */
function useLedTo({ choice: { panel }, month }: MonthDesk) {
  const list = useRef<HTMLUListElement>(null);
  const day = panel?.kind === "holidays" ? panel.day : undefined;
  const here = day !== undefined && Object.hasOwn(month.state.holidays, day);
  // biome-ignore lint/correctness/useExhaustiveDependencies: led there once more, somebody is shown it once more
  useEffect(() => {
    if (!here) return;
    const line = () => list.current?.querySelector<HTMLElement>(`[data-holiday="${day}"]`) ?? null;
    // After the panel has taken the focus to its head.
    const frame = requestAnimationFrame(() => {
      line()?.focus();
      showFound(line);
    });
    return () => cancelAnimationFrame(frame);
  }, [here, panel]);
  return list;
}
