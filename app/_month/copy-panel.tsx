"use client";
/** Classes from elsewhere: a week copied to another, last month taken over, a month file brought in. */
import { useMemo, useState } from "react";
import { dayWords, monthTitle } from "#lib/calendar/day-words.ts";
import { addMonths, dateOfDay, dayNumber, isoWeekday } from "#lib/calendar/days.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { copiesOfLastMonth } from "#lib/programme/copies.ts";
import { daysBetween } from "#lib/tide/sheet.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { send } from "../_parts/send.ts";
import { takenOverWords } from "./copy-words.ts";
import { Labelled, NumberOrNone, SlotChoice } from "./labelled.tsx";
import { asState } from "./month-acts.ts";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";
import { ReplaceMonth } from "./replace-month.tsx";
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

function CopyWeek({ desk: { month, acts } }: { readonly desk: MonthDesk }) {
  const weeks = weeksOf(month.file.dates);
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
      <h3>Take {monthTitle(before)} over</h3>
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

/** The server reads the file, and says what it could not match. */
function BringIn({ desk }: { readonly desk: MonthDesk }) {
  const { props, session } = desk;
  const [said, setSaid] = useState("");
  const [notes, setNotes] = useState<readonly string[] | null>(null);
  const [replace, setReplace] = useState(false);
  const [replacing, setReplacing] = useState<{ readonly file: File; readonly nth: number } | null>(null);
  const bring = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (!file) return;
    const at = `/api/programme/${props.month}`;
    const isTable = /\.(csv|tsv|txt)$/i.test(file.name);
    // Emptied, so that the same file, put right, can be chosen again.
    input.value = "";
    setReplacing((was) => (replace && !isTable ? { file, nth: (was?.nth ?? 0) + 1 } : null));
    setSaid("");
    setNotes(null);
    if (replace && !isTable) return;
    const sent = isTable
      ? await send<BroughtIn>("POST", `${at}/csv`, file)
      : await send<BroughtIn>("PUT", `${at}/file`, file);
    setSaid(sent.ok ? "" : sent.message);
    setNotes(sent.ok ? notesOf(sent.value) : null);
    if (sent.ok) session.say("The file is in.");
  };
  return (
    <section className={styles.form} aria-label="A month file">
      <h3>Bring a month file or a table in</h3>
      <label className="check">
        <input type="checkbox" checked={replace} onChange={(event) => setReplace(event.target.checked)} />a month file:
        in place of what is there
      </label>
      <Labelled label="File">
        {(id) => (
          <input id={id} type="file" accept=".json,.csv,.tsv,.txt" onChange={(event) => void bring(event.target)} />
        )}
      </Labelled>
      {replacing && (
        <ReplaceMonth key={replacing.nth} desk={desk} file={replacing.file} onLeave={() => setReplacing(null)} />
      )}
      {said && <p className="problem">{said}</p>}
      {notes && <Notes notes={notes} />}
    </section>
  );
}

function Notes({ notes }: { readonly notes: readonly string[] }) {
  return (
    <ul className={styles.findings} role="status">
      {notes.map((note) => (
        <li key={note} className="notice">
          {note}
        </li>
      ))}
    </ul>
  );
}

/** What the server answers: of a table how many classes, and of both what it could not match. */
interface BroughtIn {
  readonly added?: number;
  readonly there?: number;
  readonly notes: readonly string[];
}

function notesOf({ added, there = 0, notes }: BroughtIn): string[] {
  const stood = there > 0 ? ` ${plural(there, "class", "classes")} stood there already.` : "";
  return [added === undefined ? "The file is in." : `${plural(added, "class", "classes")} added.${stood}`, ...notes];
}

/** The Mondays of the month's weeks; the first may lie before it. */
function weeksOf(dates: MonthDesk["month"]["file"]["dates"]): [string, string][] {
  const mondays = new Set(daysBetween(dates).map((date) => dateOfDay(dayNumber(date) - isoWeekday(date) + 1)));
  return [...mondays].map((monday) => [monday, dayWords(monday)]);
}
