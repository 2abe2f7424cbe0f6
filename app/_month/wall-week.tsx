"use client";
/** A room's week for the wall: one page, its days one under another. */
import { dayWords } from "#lib/calendar/day-words.ts";
import { dateOfDay, dayNumber, isoWeekday } from "#lib/calendar/days.ts";
import { own } from "#lib/plan/lookup.ts";
import { classTitle } from "#lib/tide/day-marks.ts";
import { daysBetween } from "#lib/tide/sheet.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SlotChoice } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import { useMonthAfter } from "./use-month-after.ts";
import styles from "./wall.module.css";

interface WallProps {
  readonly desk: MonthDesk;
  readonly wall: { readonly room: string | null; readonly week: string | null };
}

const mondayOf = (date: string): string => dateOfDay(dayNumber(date) - isoWeekday(date) + 1);

/** Long because: one sheet of paper, from top to bottom. */
export function WallWeek({ desk: { month, props }, wall }: WallProps) {
  const { file, look, today } = month;
  const mondays = [...new Set(daysBetween(file.dates).map(mondayOf))];
  const room = wall.room !== null && own(file.rooms, wall.room) ? wall.room : (Object.keys(file.rooms)[0] ?? "");
  const week = mondays.find((monday) => monday === mondayOf(wall.week ?? today)) ?? mondays[0] ?? file.dates.from;
  const go = (to: { room?: string | null; week?: string | null }) => {
    const query = new URLSearchParams({ view: "wall", room: to.room ?? room, week: to.week ?? week });
    window.location.assign(`/programme/${props.month}?${query}`);
  };
  const days = Array.from({ length: 7 }, (_, i) => dateOfDay(dayNumber(week) + i));
  const reachesOn = (days.at(-1) ?? "") > file.dates.to;
  const { after, problem } = useMonthAfter(props.month, reachesOn);
  const here = look.slots.map(({ slot }) => ({ slot, file })).filter(({ slot }) => slot.out !== true);
  const then = (after?.slots ?? []).map((slot) => ({ slot, file: after?.file ?? file }));
  const on = [...here, ...then].filter(({ slot }) => slot.room === room);
  const nothing = (date: string): string => {
    if (date <= file.dates.to) return own(file.holidays ?? {}, date) ?? "no class";
    return after ? (own(after.file.holidays ?? {}, date) ?? "no class") : "being fetched…";
  };
  return (
    <article className={styles.wall}>
      <header className={styles.choose}>
        <SlotChoice
          label="Room"
          none="choose a room"
          value={room}
          options={Object.entries(file.rooms).map(([id, { name }]) => [id, name])}
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
      <h1>
        {own(file.rooms, room)?.name}, week of {dayWords(week)}
      </h1>
      <ProblemLine say={problem} />
      {days.map((date) => {
        const classes = on.filter(({ slot }) => slot.date === date);
        return (
          <section key={date} className={styles.day}>
            <h2>{dayWords(date)}</h2>
            {classes.length === 0 && <p className="quiet">{nothing(date)}</p>}
            <ul>
              {classes.map(({ slot, file: of }) => (
                <li key={slot.id}>
                  <time>{slot.start}</time> <b>{classTitle(of, slot)}</b>
                  {slot.coach ? `, ${own(of.coaches, slot.coach)?.name.split(" ")[0] ?? ""}` : ""}, {slot.minutes} min
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </article>
  );
}
