"use client";
import { useState } from "react";
/** The weekly pattern: each line gives a class on its days. A change here counts for all classes of the line. */
import { timeWords, tinyWeekday } from "#lib/formats/dates.ts";
import type { PatternLine } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { changeLine, type LineRuleChange, takeOutLine } from "#lib/programme/write-pattern.ts";
import { newId } from "../_parts/new-id.ts";
import { ClassFields } from "./class-fields.tsx";
import { NumberOrNone, SlotChoice } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import { planOption, SLOT_WORDS } from "./month-words.ts";
import styles from "./panel.module.css";
import { useGoToAdded } from "./use-go-to-added.ts";
import { WeekdayChoice } from "./weekday-choice.tsx";

export function PatternPanel({ desk }: { readonly desk: MonthDesk }) {
  const { month, acts } = desk;
  const room = Object.keys(month.file.rooms)[0];
  const [problem, setProblem] = useState("");
  const [list, goTo] = useGoToAdded<HTMLUListElement>();
  const add = () => {
    const id = newId();
    const refused = acts.addLine({ id, days: [1], start: "18:00", minutes: 45, ...(room ? { room } : {}) });
    setProblem(refused);
    if (refused === "") goTo(id);
  };
  return (
    <>
      <p className="quiet small">What was changed in a single class stays as it was changed.</p>
      <ul ref={list} className={styles.rows}>
        {month.state.pattern.map((line) => (
          <li key={line.id} data-row={line.id}>
            <details>
              <summary>{lineWords(desk, line)}</summary>
              <Line desk={desk} line={line} />
            </details>
          </li>
        ))}
      </ul>
      {month.writes && (
        <button type="button" className="button" onClick={add}>
          Add a line
        </button>
      )}
      {problem && <p className="problem">{problem}</p>}
    </>
  );
}

/** "Mo, We 18:00, Arms, chest, Loft, every second week" */
function lineWords({ month: { file }, formats }: MonthDesk, line: PatternLine): string {
  const theme = line.theme == null ? undefined : own(file.themes ?? {}, line.theme)?.name;
  const room = line.room == null ? undefined : own(file.rooms, line.room)?.name;
  const every = (line.every ?? 1) > 1 ? [`every ${line.every} weeks`] : [];
  const days = line.days.map((day) => tinyWeekday(day, formats)).join(", ");
  return [
    `${days} ${timeWords(line.start, formats)}`,
    ...(theme ? [theme] : []),
    ...(room ? [room] : []),
    ...every,
  ].join(", ");
}

const NTH = [
  ["1", "the first of the month"],
  ["2", "the second"],
  ["3", "the third"],
  ["4", "the fourth"],
  ["-1", "the last"],
] as const;

/** Long because: the fields of a line, in the order of the form. */
function Line({ desk, line }: { readonly desk: MonthDesk; readonly line: PatternLine }) {
  const { acts, month, props } = desk;
  const [problem, setProblem] = useState("");
  const rule = (change: LineRuleChange) => setProblem(acts.changeRule(line, change));
  const { start, minutes, ...rest } = line;
  return (
    <div className={styles.form} data-live="">
      <WeekdayChoice legend="On" days={line.days} onChange={(days) => rule({ days })} />
      <div className={styles.two}>
        <NumberOrNone
          label="Every so many weeks"
          value={line.every}
          range={{ min: 1, max: 8 }}
          onChange={(every) => rule({ every, ...(every !== null && every > 1 ? { nth: null } : {}) })}
        />
        <SlotChoice
          label="In the month"
          none="each of its days"
          value={line.nth?.[0] === undefined ? null : String(line.nth[0])}
          options={NTH}
          onChange={(nth) => rule(nth === null ? { nth } : { nth: [Number(nth)], every: null })}
        />
      </div>
      {problem && <p className="problem">{problem}</p>}
      <ClassFields
        desk={desk}
        slot={{ ...rest, start, minutes }}
        onChange={({ date: _, ...change }) => acts.run((w) => changeLine(w, line.id, change))}
      />
      <SlotChoice
        label={SLOT_WORDS.plan}
        none={SLOT_WORDS.noPlan}
        value={line.plan ?? null}
        options={props.plans.map((plan) => [plan.id, planOption(plan)])}
        onChange={(plan) => acts.run((w) => changeLine(w, line.id, { plan }))}
      />
      {month.writes && (
        <button
          type="button"
          className="button button-must"
          onClick={() =>
            acts.run(
              (w) =>
                takeOutLine(w, line.id, month.file.dates.from, { at: Date.now(), signedAt: month.signed?.at ?? null }),
              "The line was taken out.",
            )
          }
        >
          Take the line out
        </button>
      )}
    </div>
  );
}
