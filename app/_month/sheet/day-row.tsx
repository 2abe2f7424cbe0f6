/** One day of the month: its date, its classes, work by muscle group, coaches, what to mend. */

import { memo } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import { isoWeekday } from "#lib/calendar/days.ts";
import { dayOfMonth, dayWords, tinyWeekday } from "#lib/formats/dates.ts";
import { areSame } from "#lib/memo/kept.ts";
import type { CoachCell, TideDay } from "#lib/tide/types.ts";
import { ClassLines } from "./class-lines.tsx";
import { DayRail } from "./day-rail.tsx";
import { FindingLines } from "./finding-lines.tsx";
import styles from "./sheet.module.css";
import type { SheetHands, SheetShown } from "./sheet-types.ts";

interface DayRowProps {
  readonly day: TideDay;
  readonly at: number;
  readonly shown: SheetShown;
  readonly hands: SheetHands;
}

/** Drawn again only when something on it did. */
export const DayOfMonth = memo(DayRow, isSameRow);

function DayRow({ day, at, shown, hands }: DayRowProps) {
  const { weekStart } = useFormats();
  const { layout, sheet, finding } = shown;
  const marked = finding !== null && day.lines.some(({ findings }) => findings.some(({ id }) => id === finding.id));
  const work = new Map(day.groups.map((cell) => [cell.group, cell]));
  const taught = new Map(day.coaches.map((cell) => [cell.coach, cell]));
  return (
    <tr
      data-date={day.date}
      data-week={day.weekday === weekStart && at > 0 ? "begins" : undefined}
      data-time={day.date < shown.today ? "over" : day.date === shown.today ? "today" : undefined}
      data-marked={marked ? "" : undefined}
    >
      <DayHead day={day} shown={shown} hands={hands} />
      <td className={styles.classes}>
        {layout.kind === "phone" ? <ClassLines {...{ day, shown, hands }} /> : <DayRail {...{ day, shown, hands }} />}
        {layout.kind !== "laptop" && layout.rail > 0 && <FindingLines day={day} hands={hands} chosen={finding?.id} />}
      </td>
      {sheet.columns.map(({ group }) => {
        const cell = work.get(group);
        return <td key={group}>{cell && <span className="visually-hidden">{cell.words}</span>}</td>;
      })}
      {layout.kind === "laptop" && (
        <td className={styles.like}>
          {day.like && <span data-alike={day.like.tooAlike ? "" : undefined}>{day.like.percent}</span>}
        </td>
      )}
      {sheet.coaches.slice(0, layout.coaches).map(({ id }) => (
        <CoachTime key={id} cell={taught.get(id)} />
      ))}
      {layout.findings > 0 && (
        <td className={styles.mend}>
          <FindingLines day={day} hands={hands} chosen={finding?.id} low />
        </td>
      )}
    </tr>
  );
}

/** The day's name; for those who may write a button that adds a class. Long because: the day with and without the right to write, side by side. */
function DayHead({ day, shown, hands }: Omit<DayRowProps, "at">) {
  const f = useFormats();
  const { date } = day;
  const name = (
    <span className={styles.dayName} aria-hidden="true">
      <span className={styles.weekday}>{tinyWeekday(isoWeekday(date), f)}</span>
      <span className={styles.number}>{dayOfMonth(date)}</span>
    </span>
  );
  const here = shown.guests.filter(({ slot }) => slot !== null && day.marks.some((mark) => mark.slot.id === slot));
  const words = [
    dayWords(date, f),
    ...(date === shown.today ? ["today"] : []),
    ...(day.holiday ? [day.holiday] : []),
  ].join(", ");
  return (
    <th scope="row" className={styles.date}>
      {shown.writes ? (
        <button
          type="button"
          className={styles.day}
          data-day={date}
          tabIndex={shown.tabStop === date ? 0 : -1}
          aria-label={`${words}: add a class`}
          onClick={() => hands.onAdd(date)}
        >
          {name}
        </button>
      ) : (
        <span className={styles.day} data-day={date}>
          <span className="visually-hidden">{words}</span>
          {name}
        </span>
      )}
      {here.map(({ name: guest }) => (
        <span key={guest} className={styles.guest} title={`${guest} is here`}>
          <span aria-hidden="true">{guest.slice(0, 2)}</span>
          <span className="visually-hidden">{guest} is here</span>
        </span>
      ))}
    </th>
  );
}

function CoachTime({ cell }: { readonly cell: CoachCell | undefined }) {
  if (!cell) return <td className={styles.coach} data-free="" />;
  return (
    <td className={styles.coach} data-double={cell.double ? "" : undefined} data-tight={cell.tight ? "" : undefined}>
      <span className="visually-hidden">{cell.words}</span>
      <span aria-hidden="true">{cell.double ? "2×" : cell.minutes}</span>
      <span className={styles.coachRail} aria-hidden="true">
        {cell.bars.map(({ from, to }) => (
          <i key={`${from} ${to}`} style={{ left: `${from * 100}%`, width: `${Math.max(6, (to - from) * 100)}%` }} />
        ))}
      </span>
    </td>
  );
}

function isSameRow(a: DayRowProps, b: DayRowProps): boolean {
  if (a.day !== b.day || a.at !== b.at || a.hands !== b.hands) return false;
  const of = ({ shown: { layout, sheet, onlyCoach, today, writes } }: DayRowProps) => {
    const coaches = sheet.coaches.slice(0, layout.coaches).map(({ id }) => id);
    return [layout, sheet.columns, sheet.rooms.length, onlyCoach, today, writes, ...coaches];
  };
  return areSame(of(a), of(b)) && areSame(chosenOn(a), chosenOn(b));
}

/** Of what is chosen, moved or looked at in the month, that which is on this day. */
function chosenOn({ day, shown }: DayRowProps): readonly unknown[] {
  const { tabStop, openSlot, lit, moving, finding, proposed, changed, guests } = shown;
  const ids = new Set(day.marks.map(({ slot }) => slot.id));
  const here = (id: string | null) => (id !== null && ids.has(id) ? id : null);
  const found = day.lines.some(({ findings }) => findings.some(({ id }) => id === finding?.id));
  return [
    ...[here(openSlot), here(lit), here(moving), tabStop === day.date || here(tabStop), found && finding?.id],
    ...[...ids].filter((id) => proposed.has(id)),
    ...[...ids].map((id) => changed.get(id)),
    ...guests.flatMap(({ name, slot }) => (here(slot) === null ? [] : [name, slot])),
  ];
}
