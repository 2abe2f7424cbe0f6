/** What a calendar tells of a month that was signed off and may have been changed since. */
import { dateOfDay, dayNumber } from "#lib/calendar/days.ts";
import { own } from "#lib/plan/lookup.ts";
import { expandMonth } from "../expand.ts";
import type { MonthFile, MonthSlot } from "../types.ts";

/** Today and so many days after it are told as they stand. Our own choice: the window in which people are also told by notices. */
export const NEAR_DAYS = 3;

/**
 * The month as its calendar tells it: what lies ahead as it was signed, what is near or over as it stands. A class counts as near
 * when its signed or its present day is; so it becomes near once and stays so, and its sequence never goes back. `today`:
 * 'YYYY-MM-DD' in the studio's zone.
 */
export function promisedMonth(signed: MonthFile, live: MonthFile, today: string): MonthFile {
  const until = dateOfDay(dayNumber(today) + NEAR_DAYS);
  const now = new Map(stampedSlots(live).map((slot) => [slot.id, slot]));
  const isNear = (slot: MonthSlot | undefined): boolean => slot !== undefined && slot.date <= until;
  const slots = stampedSlots(signed).map((then) => {
    const present = now.get(then.id);
    now.delete(then.id);
    return present && (isNear(then) || isNear(present)) ? present : asSigned(then, signed, live);
  });
  const { pattern: _, ...rest } = live;
  return {
    ...rest,
    changedAt: laterOf(signed, live),
    ...namesOf(signed, live),
    slots: [...slots, ...[...now.values()].filter(isNear)],
  };
}

/** Each slot says itself when it was changed: the two months have different answers for those that do not. */
const stampedSlots = (month: MonthFile): MonthSlot[] =>
  expandMonth(month).map((slot) => (slot.changedAt === undefined ? { ...slot, changedAt: month.changedAt } : slot));

const laterOf = (a: MonthFile, b: MonthFile): string => (a.changedAt < b.changedAt ? b : a).changedAt;

/**
 * Rooms and coaches go by their present names: it is the same door and the same person. A plan is told as it was known then, or as it
 * is known since. A theme is what the class is called: where it has another name since, both stand, and `signedThemeId` names the old one.
 */
function namesOf(signed: MonthFile, live: MonthFile): Pick<MonthFile, "rooms" | "coaches" | "themes" | "plans"> {
  const renamed = Object.entries(signed.themes ?? {}).filter(([id]) => isRenamed(id, signed, live));
  return {
    rooms: { ...signed.rooms, ...live.rooms },
    coaches: { ...signed.coaches, ...live.coaches },
    themes: {
      ...signed.themes,
      ...live.themes,
      ...Object.fromEntries(renamed.map(([id, theme]) => [signedThemeId(id), theme])),
    },
    plans: { ...signed.plans, ...live.plans },
  };
}

function isRenamed(id: string, signed: MonthFile, live: MonthFile): boolean {
  const [then, now] = [signed, live].map(({ themes }) => own(themes ?? {}, id)?.name);
  return then !== undefined && now !== undefined && then !== now;
}

/** No id of a theme has a space. */
const signedThemeId = (id: string): string => `${id} as signed`;

const asSigned = (slot: MonthSlot, signed: MonthFile, live: MonthFile): MonthSlot =>
  typeof slot.theme === "string" && isRenamed(slot.theme, signed, live)
    ? { ...slot, theme: signedThemeId(slot.theme) }
    : slot;
