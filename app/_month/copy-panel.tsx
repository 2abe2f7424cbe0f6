"use client";
/** A week copied to another. */
import { useState } from "react";
import { dayWords } from "#lib/calendar/day-words.ts";
import { dateOfDay, dayNumber, isoWeekday } from "#lib/calendar/days.ts";
import { daysBetween } from "#lib/tide/sheet.ts";
import { SlotChoice } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";

export function CopyPanel({ desk: { month, acts } }: { readonly desk: MonthDesk }) {
  const weeks = weeksOf(month.file.dates);
  const [from, setFrom] = useState(weeks[0]?.[0] ?? "");
  const [to, setTo] = useState(weeks[1]?.[0] ?? "");
  return (
    <div className={styles.form}>
      <p className="quiet small">Classes that stand there already stay. Notes are not copied.</p>
      <SlotChoice
        label="Copy the week of"
        none="choose a week"
        value={from}
        options={weeks}
        onChange={(week) => setFrom(week ?? "")}
      />
      <SlotChoice
        label="To the week of"
        none="choose a week"
        value={to}
        options={weeks}
        onChange={(week) => setTo(week ?? "")}
      />
      <button
        type="button"
        className="button button-strong"
        disabled={!month.writes || from === "" || to === "" || from === to}
        onClick={() => acts.copyWeek(from, to)}
      >
        Copy the week
      </button>
    </div>
  );
}

/** The Mondays of the month's weeks; the first may lie before it. */
function weeksOf(dates: MonthDesk["month"]["file"]["dates"]): [string, string][] {
  const mondays = new Set(daysBetween(dates).map((date) => dateOfDay(dayNumber(date) - isoWeekday(date) + 1)));
  return [...mondays].map((monday) => [monday, dayWords(monday)]);
}
