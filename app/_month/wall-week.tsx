"use client";
/** A room's week for the wall: one page, its days one under another, with what is different from the signed month. */
import { dayWords } from "#lib/calendar/day-words.ts";
import { dateOfDay, dayNumber, isoWeekday } from "#lib/calendar/days.ts";
import { own } from "#lib/plan/lookup.ts";
import { firstName } from "#lib/tide/day-marks.ts";
import { daysBetween } from "#lib/tide/sheet.ts";
import { type WallLine, wallLines } from "#lib/tide/wall-lines.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SlotChoice } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import { signingWords, weekSinceWords } from "./signed-words.ts";
import { useMonthAfter } from "./use-month-after.ts";
import styles from "./wall.module.css";

interface WallProps {
  readonly desk: MonthDesk;
  readonly wall: { readonly room: string | null; readonly week: string | null };
}

const mondayOf = (date: string): string => dateOfDay(dayNumber(date) - isoWeekday(date) + 1);

export function WallWeek({ desk, wall }: WallProps) {
  const { month, since } = desk;
  const { file, look, today, signed } = month;
  const mondays = [...new Set(daysBetween(file.dates).map(mondayOf))];
  const room = wall.room !== null && own(file.rooms, wall.room) ? wall.room : (Object.keys(file.rooms)[0] ?? "");
  const week = mondays.find((monday) => monday === mondayOf(wall.week ?? today)) ?? mondays[0] ?? file.dates.from;
  const days = Array.from({ length: 7 }, (_, i) => dateOfDay(dayNumber(week) + i));
  const slots = look.slots.map(({ slot }) => slot);
  const { after, problem } = useMonthAfter(desk.props.month, (days.at(-1) ?? "") > file.dates.to);
  const then = after ? wallLines({ month: after.file, slots: after.slots, changes: [] }, room) : [];
  const lines = [...wallLines({ month: file, slots, changes: since.slots }, room), ...then].filter(({ date }) =>
    days.includes(date),
  );
  const without = (date: string): string => {
    const of = date > file.dates.to ? after?.file : file;
    return of ? (own(of.holidays ?? {}, date) ?? "no class") : "being fetched…";
  };
  return (
    <article className={styles.wall}>
      <WallChoice desk={desk} room={room} week={week} mondays={mondays} />
      <h1>
        {own(file.rooms, room)?.name}, week of {dayWords(week)}
      </h1>
      {signed && (
        <p className="quiet">
          {signingWords(signed, file.zone)} {weekSinceWords(since, lines.filter(({ since: is }) => is !== null).length)}
        </p>
      )}
      <ProblemLine say={problem} />
      {days.map((date) => (
        <WallDay key={date} date={date} lines={lines.filter((line) => line.date === date)} without={without(date)} />
      ))}
    </article>
  );
}

interface ChoiceProps extends Pick<WallProps, "desk"> {
  readonly room: string;
  /** The Monday that is shown, and all there are. */
  readonly week: string;
  readonly mondays: readonly string[];
}

function WallChoice({ desk: { month, props }, room, week, mondays }: ChoiceProps) {
  const go = (to: { room?: string | null; week?: string | null }) => {
    const query = new URLSearchParams({ view: "wall", room: to.room ?? room, week: to.week ?? week });
    window.location.assign(`/programme/${props.month}?${query}`);
  };
  return (
    <header className={styles.choose}>
      <SlotChoice
        label="Room"
        none="choose a room"
        value={room}
        options={Object.entries(month.file.rooms).map(([id, { name }]) => [id, name])}
        onChange={(id) => go({ room: id })}
      />
      <SlotChoice
        label="Week of"
        none="choose a week"
        value={week}
        options={mondays.map((monday) => [monday, dayWords(monday)])}
        onChange={(monday) => go({ week: monday })}
      />
      <button type="button" className="button button-strong" onClick={() => window.print()}>
        Print
      </button>
      <a className="button" href={`/programme/${props.month}`}>
        Back to the month
      </a>
    </header>
  );
}

interface DayProps {
  readonly date: string;
  readonly lines: readonly WallLine[];
  /** What is said of a day without a class. */
  readonly without: string;
}

function WallDay({ date, lines, without }: DayProps) {
  return (
    <section className={styles.day}>
      <h2>{dayWords(date)}</h2>
      <div>
        {!lines.some(({ gone }) => !gone) && <p className="quiet">{without}</p>}
        <ul>
          {lines.map((line) => (
            <li key={`${line.id} ${line.gone}`}>
              <LineWords line={line} />
              {line.since !== null && <span className={styles.since}>{line.since}</span>}
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}

function LineWords({ line: { gone, start, title, coach, minutes } }: { readonly line: WallLine }) {
  const words = (
    <>
      <time>{start}</time> <b>{title}</b>
      {coach === null ? "" : `, ${firstName(coach)}`}, {minutes} min
    </>
  );
  return gone ? <s>{words}</s> : words;
}
