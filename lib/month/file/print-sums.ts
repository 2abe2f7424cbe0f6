/** The sums of a month as the command writes them, rounded half away from zero. */
import { weekText } from "#lib/calendar/days.ts";
import { halfAway, withoutNoise } from "#lib/numbers/round.ts";
import { instantText } from "../instants.ts";
import type {
  CoachDay,
  CoachSums,
  MonthSums,
  RegularsDay,
  RegularsSums,
  RegularsWeek,
  TimedSlot,
  Variety,
} from "../sums-types.ts";

export const shownSeconds = (x: number): number => halfAway(x, 1);
export const shownMinutes = (x: number): number => halfAway(x, 0);
export const shownShare = (x: number): number => halfAway(x, 4);
const shareOrNull = (x: number | null): number | null => (x === null ? null : shownShare(x));

export function printSums({ slots, regulars, coaches, themes }: MonthSums) {
  return {
    slots: slots.map(printSlot),
    regulars: mapped(regulars, printRegulars),
    coaches: mapped(coaches, printCoach),
    themes,
  };
}

export const mapped = <A, B>(map: Readonly<Record<string, A>>, of: (value: A) => B): Record<string, B> =>
  Object.fromEntries(Object.entries(map).map(([id, value]) => [id, of(value)]));

const printSlot = ({ slot, from, to }: TimedSlot) => ({
  id: slot.id,
  from: instantText(from),
  to: instantText(to),
  week: weekText(slot.date),
  out: slot.out === true,
});

const printRegulars = ({ days, recovery, neighbours, weeks, variety }: RegularsSums) => ({
  days: days.map(printDay),
  recovery: recovery.map((one) => ({ ...one, minutes: shownMinutes(one.minutes) })),
  neighbours: neighbours.map(({ slots, likeness }) => ({ slots, likeness: shareOrNull(likeness) })),
  weeks: weeks.map(printWeek),
  variety: printVariety(variety),
});

const printDay = ({ date, groups, push, pull, metMinutes, heavy }: RegularsDay) => ({
  date,
  groups: mapped(groups, shownSeconds),
  push: shownSeconds(push),
  pull: shownSeconds(pull),
  metMinutes: withoutNoise(metMinutes),
  heavy,
});

const printWeek = (one: RegularsWeek) => ({
  week: one.week,
  whole: one.whole,
  seconds: shownSeconds(one.seconds),
  metMinutes: withoutNoise(one.metMinutes),
  change: shareOrNull(one.change),
  ...printVariety(one),
});

const printVariety = ({ distinct, effective }: Variety) => ({ distinct, effective: shareOrNull(effective) });

const printCoach = ({ days, minutes, talkSeconds }: CoachSums) => ({
  days: days.map(printCoachDay),
  minutes: shownMinutes(minutes),
  talkSeconds: shownSeconds(talkSeconds),
});

const printCoachDay = ({ date, classes, minutes, talkSeconds, from, to, gaps }: CoachDay) => ({
  date,
  classes,
  minutes: shownMinutes(minutes),
  talkSeconds: shownSeconds(talkSeconds),
  from: instantText(from),
  to: instantText(to),
  gaps: gaps.map(shownMinutes),
});
