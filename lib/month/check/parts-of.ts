/** Parts of a month with their sums. `classes` of a part: of known..to, by start, then id. */
import { own } from "#lib/plan/lookup.ts";
import type { CoachPart, RegularsPart, RoomPart, SlotPart, ThemePart } from "../define/parts.ts";
import type { MonthWeek } from "../instants.ts";
import { coachSums } from "../sums/coaches.ts";
import { regularsSums, type SumsFrame } from "../sums/regulars.ts";
import { themeSums } from "../sums/themes.ts";
import type { MonthClass } from "../sums-types.ts";
import type { MonthCoach, MonthFile, MonthLimits, MonthRoom, MonthTheme, Regulars } from "../types.ts";
import { isKnown } from "./classes.ts";

export const frameOf = (
  { from, to }: MonthFile["dates"],
  weeks: readonly MonthWeek[],
  limits: MonthLimits,
): SumsFrame => ({
  from,
  to,
  weeks,
  limits,
});

export function slotPartOf(month: MonthFile, one: MonthClass): SlotPart {
  const { slot } = one;
  const plan = slot.plan ? own(month.plans, slot.plan) : undefined;
  return {
    one,
    room: entry(month.rooms, slot.room),
    coach: entry(month.coaches, slot.coach),
    theme: entry(month.themes, slot.theme),
    regulars: (slot.regulars ?? []).flatMap((id) => own(month.regulars, id) ?? []),
    planUnknown: plan !== undefined && !isKnown(plan),
    holiday: own(month.holidays, slot.date),
  };
}

const entry = <T>(map: Readonly<Record<string, T>> | undefined, id: string | null | undefined): T | undefined =>
  id ? own(map, id) : undefined;

export const roomPartOf = (id: string, room: MonthRoom, classes: readonly MonthClass[]): RoomPart => ({
  id,
  room,
  classes,
});

interface OfClasses {
  readonly classes: readonly MonthClass[];
  readonly frame: SumsFrame;
}

export const coachPartOf = (id: string, coach: MonthCoach, { classes, frame }: OfClasses): CoachPart => ({
  id,
  coach,
  classes,
  sums: coachSums(classes, frame),
});

export const regularsPartOf = (id: string, regulars: Regulars, { classes, frame }: OfClasses): RegularsPart => ({
  id,
  regulars,
  classes,
  weeks: frame.weeks,
  sums: regularsSums(classes, frame),
});

export function themePartOf(id: string, theme: MonthTheme, { classes, frame }: OfClasses): ThemePart {
  const counted = classes.filter(({ date }) => date >= frame.from && date <= frame.to);
  return { id, theme, classes: counted, sums: themeSums(counted, theme) };
}

/** The classes of each room, coach, group of regulars or theme. */
export function classesBy(
  classes: readonly MonthClass[],
  idsOf: (slot: MonthClass["slot"]) => readonly (string | null | undefined)[],
): ReadonlyMap<string, readonly MonthClass[]> {
  const found = new Map<string, MonthClass[]>();
  for (const one of classes) {
    for (const id of idsOf(one.slot)) {
      if (!id) continue;
      const list = found.get(id);
      if (list) list.push(one);
      else found.set(id, [one]);
    }
  }
  return found;
}
