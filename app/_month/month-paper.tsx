"use client";
import { useMemo, useRef } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
/** The month on one A4 page: its sheet, and below it what is open, in words. */
import { isoWeekday } from "#lib/calendar/days.ts";
import { dayOfMonth, monthTitle, tinyWeekday } from "#lib/formats/dates.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { findingsByDay } from "#lib/tide/day-findings.ts";
import { monthCounts, promiseWords } from "#lib/tide/month-counts.ts";
import { daysBetween } from "#lib/tide/sheet.ts";
import type { MonthDesk } from "./month-desk.ts";
import { dropWords, legendWords } from "./month-foot.tsx";
import styles from "./paper.module.css";
import { type OnPaper, sameWordsOnce } from "./same-words-once.ts";
import type { SheetHands, SheetShown } from "./sheet/sheet-types.ts";
import { TideTable } from "./sheet/tide-table.tsx";
import { useTideSheet } from "./sheet/use-sheet.ts";
import { signingWords, sinceWords } from "./signed-words.ts";

/** Px of an A4 page between its margins, at 96 to the inch. */
const PAPER_WIDTH = 726;

const nothing = () => undefined;
const NO_HANDS: SheetHands = {
  ...{ onOpen: nothing, onAdd: nothing, onFinding: nothing, onFocusSlot: nothing },
  ...{ onKeyDown: nothing, onGrab: nothing, onPoint: nothing },
};

/** Long because: the head, the sheet and what is open, in the order of the page. */
export function MonthPaper({ desk }: { readonly desk: MonthDesk }) {
  const { month, choice, props } = desk;
  const { regulars, rooms } = choice;
  const { file, look } = month;
  const paper = useRef({ width: PAPER_WIDTH }).current;
  const measured = useTideSheet({
    ...{ month: file, sums: look.sums, findings: desk.open.findings, regulars, rooms },
    ...{ allGroups: true, allCoaches: true, paper, formats: desk.formats },
  });
  const { sheet, layout, tops, box, body } = measured;
  const shown: SheetShown = {
    ...{ sheet, layout, tops, tabStop: "", openSlot: null, lit: null, moving: null, onlyCoach: null, finding: null },
    ...{ proposed: new Set(), changed: desk.since.marks, today: "", writes: false, guests: [] },
  };
  const counts = monthCounts(file, look.sums, desk.open.findings);
  return (
    <article className={styles.paper} style={{ width: PAPER_WIDTH }}>
      <h1>{monthTitle(props.month, desk.formats)}</h1>
      <p>
        {file.studio.name}. {plural(counts.classes, "class", "classes")}.
        {regulars !== null && (
          <>
            {" "}
            Work and rest of the <b>{own(file.regulars, regulars)?.name}</b>.
          </>
        )}
      </p>
      <div ref={box}>
        <TideTable
          shown={shown}
          hands={NO_HANDS}
          body={body}
          title={monthTitle(props.month, desk.formats)}
          onCoach={nothing}
        />
      </div>
      <SinceInWords desk={desk} />
      <OpenInWords desk={desk} />
      <p className={styles.legend}>
        {legendWords(desk)} {dropWords(desk)}
      </p>
    </article>
  );
}

/** What the dots under a class mean, and every change in words: paper has no place to point at. */
function SinceInWords({ desk: { month, since, formats } }: { readonly desk: MonthDesk }) {
  const { signed } = month;
  if (!signed) return null;
  return (
    <section className={styles.since} aria-label="Since it was signed">
      <h2>Since it was signed</h2>
      <p>
        {signingWords(signed, formats)} {sinceWords(since)}
      </p>
      <ul>
        {[...since.renamed, ...since.changes].map(({ id, sentence }) => (
          <li key={id}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}

const LEVELS = [
  ["must", "Must fix"],
  ["look", "Look again"],
] as const;

function OpenInWords({ desk: { month, choice, open: look, formats } }: { readonly desk: MonthDesk }) {
  const { file } = month;
  const lines = useMemo(() => {
    const slots = new Map(look.slots.map(({ slot }) => [slot.id, slot]));
    const place = { formats, month: file, regulars: choice.regulars, slot: (id: string) => slots.get(id) };
    const { byDay } = findingsByDay(look.findings, place, daysBetween(file.dates), true);
    return [...byDay]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .flatMap(([date, all]) => all.map((line) => ({ date, line })));
  }, [file, look, choice.regulars, formats]);
  const promised = promiseWords(look.sums);
  return (
    <section className={styles.open} aria-label="What is open">
      {LEVELS.map(([level, title]) => (
        <Level key={level} title={title} lines={lines.filter(({ line }) => line.level === level)} />
      ))}
      {promised && <p>{promised}</p>}
    </section>
  );
}

function Level({ title, lines }: { readonly title: string; readonly lines: readonly OnPaper[] }) {
  const f = useFormats();
  if (lines.length === 0) return null;
  const dayWords = (date: string) => `${tinyWeekday(isoWeekday(date), f)} ${dayOfMonth(date)}`;
  // The sheet above has the weekday beside each number.
  const daysWords = (dates: readonly string[]) =>
    dates.length > 2 ? dates.map(dayOfMonth).join(", ") : dates.map(dayWords).join(", ");
  return (
    <div>
      <h2>{title}</h2>
      <ul>
        {sameWordsOnce(lines).map(({ words, dates }) => (
          <li key={words}>
            <b>{daysWords(dates)}</b> {words}
          </li>
        ))}
      </ul>
    </div>
  );
}
