"use client";
import { useFormats } from "#app/_parts/formats.tsx";
import { dateOfDay, dayNumber, isDate } from "#lib/calendar/days.ts";
/** A room's week for the wall: one page, its days one under another, with what is different from the signed month. */
import { timesIn } from "#lib/formats/canonical-times.ts";
import { dayWords, timeWords, weekBegins } from "#lib/formats/dates.ts";
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

export function WallWeek({ desk, wall }: WallProps) {
  const { month, since, formats: f } = desk;
  const { file, look, today, signed } = month;
  const weeks = [...new Set(daysBetween(file.dates).map((date) => weekBegins(date, f)))];
  const room = wall.room !== null && own(file.rooms, wall.room) ? wall.room : (Object.keys(file.rooms)[0] ?? "");
  const week =
    weeks.find((first) => first === weekBegins(isDate(wall.week ?? "") ? (wall.week ?? "") : today, f)) ??
    weeks[0] ??
    file.dates.from;
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
      <WallChoice desk={desk} room={room} week={week} weeks={weeks} />
      <h1>
        {own(file.rooms, room)?.name}, week of {dayWords(week, f)}
      </h1>
      {signed && (
        <p className="quiet">
          {signingWords(signed, f)} {weekSinceWords(since, lines.filter(({ since: is }) => is !== null).length)}
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
  /** The first day of the week that is shown, and of all there are. */
  readonly week: string;
  readonly weeks: readonly string[];
}

function WallChoice({ desk: { month, props }, room, week, weeks }: ChoiceProps) {
  const f = useFormats();
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
        options={weeks.map((first) => [first, dayWords(first, f)])}
        onChange={(first) => go({ week: first })}
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
  const f = useFormats();
  return (
    <section className={styles.day}>
      <h2>{dayWords(date, f)}</h2>
      <div>
        {!lines.some(({ gone }) => !gone) && <p className="quiet">{without}</p>}
        <ul>
          {lines.map((line) => (
            <li key={`${line.id} ${line.gone}`}>
              <LineWords line={line} />
              {line.since !== null && <span className={styles.since}>{timesIn(line.since, f)}</span>}
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}

function LineWords({ line: { gone, start, title, coach, minutes } }: { readonly line: WallLine }) {
  const f = useFormats();
  const words = (
    <>
      <time>{timeWords(start, f)}</time> <b>{title}</b>
      {coach === null ? "" : `, ${firstName(coach)}`}, {minutes} min
    </>
  );
  return gone ? <s>{words}</s> : words;
}
