/** The month's sheet, put together: marks and words on each day's rail, drops and collisions, coaches, what to mend. */

import { dateOfDay, dayNumber, isoWeek, isoWeekday } from "#lib/calendar/days.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { signedPercent, wholePercent } from "#lib/formats/percent.ts";
import type { MonthSums } from "#lib/month/sums-types.ts";
import { limitsOfMonth, type MonthFile, type MonthFinding, type MonthSlot } from "#lib/month/types.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Group } from "#lib/plan/schema.ts";
import { coachCell, coachesOf } from "./coach-cells.ts";
import { groupWords, HEAD_TO_FOOT, regionOf } from "./columns.ts";
import { findingsByDay } from "./day-findings.ts";
import type { MarksOf } from "./day-marks.ts";
import { collisionsOf, dropsOf, workByGroup } from "./drops.ts";
import { groupCellWords } from "./finding-words.ts";
import { SheetKept } from "./sheet-kept.ts";
import { timeAxis } from "./time-axis.ts";
import type { GroupCell, LikeCell, TideColumn, TideDay, TideSheet, TideSizes } from "./types.ts";

export interface TideOf {
  readonly month: MonthFile;
  readonly sums: MonthSums;
  readonly findings: readonly MonthFinding[];
  /** Whose work and rest is shown. */
  readonly regulars: string | null;
  /** Ids of the rooms that are shown; classes without a room always are. */
  readonly rooms: readonly string[];
  readonly groups: readonly Group[];
  readonly formats: Formats;
  /** A class is on its way: the hours across stay those of the laying out before, so that they do not move under a hand. */
  readonly holdsHours?: boolean;
}

/** How many columns have a strong head. */
const STRONGEST = 4;
/** Of a tablet's rail, px at the right for the words that stand under its last classes. */
const UNDER_ROOM = 64;

export const daysBetween = ({ from, to }: MonthFile["dates"]): string[] => {
  const first = dayNumber(from);
  return Array.from({ length: Math.max(0, dayNumber(to) - first + 1) }, (_, i) => dateOfDay(first + i));
};

/** The groups that these regulars work hardest, in the order of the columns. */
export function hardestGroups(sums: MonthSums, regulars: string | null, count: number): Group[] {
  if (regulars === null) return HEAD_TO_FOOT.slice(0, count);
  const work = workByGroup(sums, regulars);
  const hardest = [...HEAD_TO_FOOT].sort((a, b) => (work.get(b) ?? 0) - (work.get(a) ?? 0)).slice(0, count);
  return HEAD_TO_FOOT.filter((group) => hardest.includes(group));
}

/** `kept`: of the laying out before, whose unchanged parts stay the same objects. */
export function tideSheet(of: TideOf, sizes: TideSizes, kept: SheetKept = new SheetKept()): TideSheet {
  const { month, sums, regulars } = of;
  const shown = sums.slots.map(({ slot }) => slot).filter((slot) => isShown(of, slot));
  const held = of.holdsHours ? kept.hoursAt(sizes.railWidth) : undefined;
  const wide = held ?? timeAxis(shown, sizes.railWidth, sizes.kind === "laptop" ? undefined : UNDER_ROOM);
  const marks = kept.begin({ month, axis: wide, rooms: of.rooms, regulars, formats: of.formats });
  const columns = columnsOf(of, sizes);
  const rooms = of.rooms.map((id) => ({ id, name: own(month.rooms, id)?.name ?? id }));
  const scale = { first: month.dates.from, zone: month.zone, tops: sizes.tops };
  const drops = regulars === null ? null : { month, sums, regulars, columns, groupWidth: sizes.groupWidth, scale };
  return kept.end({
    ...{ axis: marks.axis, rooms, columns },
    coaches: coachesOf(month, sums),
    days: daysOf(of, { shown, marks, kept }, sizes),
    drops: drops ? dropsOf(drops) : [],
    collisions: drops ? collisionsOf(drops, of.findings) : [],
  });
}

const isShown = ({ month: { dates }, rooms }: TideOf, slot: MonthSlot): boolean =>
  slot.date >= dates.from && slot.date <= dates.to && (slot.room == null || rooms.includes(slot.room));

function columnsOf({ sums, regulars, groups }: TideOf, { groupWidth }: TideSizes): TideColumn[] {
  const strong = regulars === null ? [] : hardestGroups(sums, regulars, STRONGEST);
  return groups.map((group, i) => ({
    ...{ group, region: regionOf(group), words: groupWords(group) },
    x: (i + 0.5) * groupWidth,
    strong: strong.includes(group),
  }));
}

interface DaysOf {
  readonly shown: readonly MonthSlot[];
  readonly marks: MarksOf;
  readonly kept: SheetKept;
}

function daysOf(of: TideOf, { shown, marks, kept }: DaysOf, sizes: TideSizes): TideDay[] {
  const dates = daysBetween(of.month.dates);
  const slots = new Map(of.sums.slots.map(({ slot }) => [slot.id, slot]));
  const place = {
    month: of.month,
    regulars: of.regulars,
    formats: of.formats,
    slot: (id: string) => slots.get(id),
    fits: fitsIn(sizes),
  };
  const [shownOn, allOn] = [byDate(shown), byDate([...slots.values()])];
  const { byDay } = findingsByDay(of.findings, place, dates);
  const recovery = new Map<string, number>();
  for (const { group, to, minutes } of recoveriesOf(of)) recovery.set(`${to} ${group}`, minutes);
  return dates.map((date) => {
    const on = (allOn.get(date) ?? []).filter((slot) => slot.out !== true);
    const placed = (shownOn.get(date) ?? []).map((slot) => kept.mark(marks, slot));
    const coach = { month: of.month, sums: of.sums, slots: on, date };
    return {
      ...{ date, weekday: isoWeekday(date), marks: placed },
      holiday: of.month.holidays?.[date] ?? null,
      labels: kept.labelsOf(date, placed, sizes),
      groups: groupsOf(of, date, recovery),
      like: likeOf(of, date, slots),
      coaches: Object.keys(of.month.coaches).flatMap((id) => coachCell(coach, id) ?? []),
      lines: byDay.get(date) ?? [],
      week: weekWords(of, date, dates.at(-1) ?? date),
    };
  });
}

function byDate(slots: readonly MonthSlot[]): Map<string, MonthSlot[]> {
  const found = new Map<string, MonthSlot[]>();
  for (const slot of slots) {
    const there = found.get(slot.date);
    if (there) there.push(slot);
    else found.set(slot.date, [slot]);
  }
  return found;
}

/** Px beside a finding's words: its sign, and "and 2 more". */
const BESIDE_WORDS = 72;

const fitsIn =
  ({ findingsWidth, measure }: TideSizes) =>
  (words: string): boolean =>
    measure(words, true) <= findingsWidth - BESIDE_WORDS;

const recoveriesOf = ({ sums, regulars }: TideOf) =>
  regulars === null ? [] : (own(sums.regulars, regulars)?.recovery ?? []);

function groupsOf(
  { sums, regulars, groups }: TideOf,
  date: string,
  recovery: ReadonlyMap<string, number>,
): GroupCell[] {
  const day = regulars === null ? undefined : own(sums.regulars, regulars)?.days.find((one) => one.date === date);
  if (!day) return [];
  return groups.flatMap((group) => {
    if (!((day.groups[group] ?? 0) > 0)) return [];
    const heavy = day.heavy.includes(group);
    return [
      { group, heavy, words: groupCellWords(group, heavy, heavy ? recovery.get(`${date} ${group}`) : undefined) },
    ];
  });
}

/** The likest of a day's classes to the class before it. */
function likeOf(of: TideOf, date: string, slots: ReadonlyMap<string, MonthSlot>): LikeCell | null {
  const pairs = of.regulars === null ? [] : (own(of.sums.regulars, of.regulars)?.neighbours ?? []);
  const todays = pairs.filter(
    ({ slots: [, second], likeness }) => likeness !== null && slots.get(second)?.date === date,
  );
  const [first, ...rest] = todays;
  if (!first) return null;
  const most = rest.reduce((a, b) => ((b.likeness ?? 0) > (a.likeness ?? 0) ? b : a), first);
  const likeness = most.likeness ?? 0;
  return {
    percent: wholePercent(likeness),
    tooAlike: likeness >= limitsOfMonth(of.month).likeMost,
    slots: most.slots,
  };
}

/**
 * On a Sunday, and on the month's last day, what the week came to: "Week: 17 moves, work +1%". It is the ISO week that is
 * computed, which is said where the reader's weeks begin on another day.
 */
function weekWords({ sums, regulars, formats }: TideOf, date: string, last: string): string {
  if (regulars === null || (isoWeekday(date) !== 7 && date !== last)) return "";
  const { year, week } = isoWeek(date);
  const id = `${year}-W${String(week).padStart(2, "0")}`;
  const sum = own(sums.regulars, regulars)?.weeks.find((one) => one.week === id);
  if (!sum?.whole || sum.distinct === 0) return "";
  const change = sum.change === null ? "" : `, work ${signedPercent(sum.change)}`;
  return `${formats.weekStart === 1 ? "Week" : "To Sunday"}: ${plural(sum.distinct, "move")}${change}`;
}
