"use client";
/** Classes from elsewhere: a week copied to another, last month taken over, a month file brought in. */
import { useMemo, useState } from "react";
import { addMonths } from "#lib/calendar/days.ts";
import { dayWords, monthTitle, weekBegins } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { own } from "#lib/plan/lookup.ts";
import { copiesOfLastMonth } from "#lib/programme/copies.ts";
import { daysBetween } from "#lib/tide/sheet.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { BringIn } from "./bring-in.tsx";
import { takenOverWords } from "./copy-words.ts";
import { NumberOrNone, SlotChoice } from "./labelled.tsx";
import { asState } from "./month-acts.ts";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";
import { useMonthFile } from "./use-month-file.ts";

export function CopyPanel({ desk }: { readonly desk: MonthDesk }) {
  return (
    <fieldset disabled={!desk.month.writes} className={styles.form}>
      <CopyWeek desk={desk} />
      <LastMonth desk={desk} />
      <BringIn desk={desk} />
    </fieldset>
  );
}

function CopyWeek({ desk: { month, acts, formats } }: { readonly desk: MonthDesk }) {
  const weeks = weeksOf(month.file.dates, formats);
  const [from, setFrom] = useState(weeks[0]?.[0] ?? "");
  const [problem, setProblem] = useState("");
  const [to, setTo] = useState(weeks[1]?.[0] ?? "");
  return (
    <section className={styles.form} aria-label="Copy a week">
      <h3>Copy a week</h3>
      <p className="quiet small">
        Classes of the pattern get what was changed in that week, their plans too; others that stand there already stay.
        Notes are not copied.
      </p>
      <div className={styles.two}>
        <SlotChoice
          label="The week of"
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
      </div>
      <button
        type="button"
        className="button"
        disabled={from === "" || to === "" || from === to}
        onClick={() => setProblem(acts.copyWeek(from, to))}
      >
        Copy the week
      </button>
      {problem && <p className="problem">{problem}</p>}
    </section>
  );
}

/** The classes of the month before on the same days of its weeks: first what would come, then the act. */
function LastMonth({ desk }: { readonly desk: MonthDesk }) {
  const { acts, props, month } = desk;
  const [shift, setShift] = useState(0);
  const [refused, setRefused] = useState("");
  const before = addMonths(props.month, -1);
  const { file: last, problem } = useMonthFile(before);
  const would = useMemo(
    () => last && copiesOfLastMonth(month.state, asState(last, month.state), shift),
    [last, month.state, shift],
  );
  const themes = month.file.themes ?? {};
  return (
    <section className={styles.form} aria-label="Last month">
      <h3>Take {monthTitle(before, desk.formats)} over</h3>
      <NumberOrNone
        label="Themes further on by"
        hint="in the order of their names, among those that last month had more than once; 0 leaves all as they were"
        value={shift}
        range={{ min: 0, max: 50 }}
        onChange={(by) => setShift(by ?? 0)}
      />
      {would && <p role="status">{takenOverWords(would, (id) => own(themes, id)?.name ?? id)}</p>}
      <button
        type="button"
        className="button"
        disabled={!would || would.add.length === 0}
        onClick={() => last && setRefused(acts.takeLastMonth(last, shift))}
      >
        Take them over, without plans
      </button>
      <ProblemLine say={problem || refused} />
    </section>
  );
}

/** The Mondays of the month's weeks; the first may lie before it. */
function weeksOf(dates: MonthDesk["month"]["file"]["dates"], f: Formats): [string, string][] {
  const begins = new Set(daysBetween(dates).map((date) => weekBegins(date, f)));
  return [...begins].map((first) => [first, dayWords(first, f)]);
}
