/** What a calendar tells of a month that was signed off and may have been changed since. */
import { dateOfDay, dayNumber } from "#lib/calendar/days.ts";
import { own } from "#lib/plan/lookup.ts";
import { expandMonth } from "../expand.ts";
import type { MonthFile, MonthSlot } from "../types.ts";

/** Today and so many days after it are told as they stand. Our own choice: the window in which people are also told by notices. */
const NEAR_DAYS = 3;

/** The last day that is told as it stands, 'YYYY-MM-DD'. */
export const lastNearDay = (today: string): string => dateOfDay(dayNumber(today) + NEAR_DAYS);

/** What is noted of a class beside its month's file. */
export interface ToldNumber {
  readonly sequence: number;
  /** INSTANT. */
  readonly changedAt: string;
  /** The sequence that it got by its last change on a near day, or away from one; left out: there was none. */
  readonly near?: number;
}

/**
 * The month as its calendar tells it: what lies ahead as it was signed, what is near or over as it stands. A class counts as near
 * when its signed or its present day is, or when it was since it was signed: what was told as it stands once stays told so until
 * the month is signed again, so no number and no stamp goes back. One that left the month is told as called off where it would be
 * told as it stands. `today`: 'YYYY-MM-DD' in the studio's zone; `numbers` of the live month, by class.
 */
export function promisedMonth(
  signed: MonthFile,
  live: MonthFile,
  today: string,
  numbers: Readonly<Record<string, ToldNumber>> = {},
): MonthFile {
  const until = lastNearDay(today);
  const now = new Map(stampedSlots(live).map((slot) => [slot.id, slot]));
  const isNear = (slot: MonthSlot): boolean => slot.date <= until;
  const wasNear = ({ id, sequence = 0 }: MonthSlot): boolean => (own(numbers, id)?.near ?? -1) > sequence;
  const slots = stampedSlots(signed).map((then) => {
    const present = now.get(then.id);
    now.delete(then.id);
    const old = asSigned(then, signed, live);
    if (!isNear(then) && !(present && isNear(present)) && !wasNear(then)) return old;
    return present ?? goneSlot(old, own(numbers, then.id));
  });
  const added = [...now.values()].filter((slot) => isNear(slot) || own(numbers, slot.id)?.near !== undefined);
  const { pattern: _, ...rest } = live;
  return { ...rest, changedAt: laterOf(signed, live), ...namesOf(signed, live), slots: [...slots, ...added] };
}

/** Called off, with the number that its going has; as it was signed where nothing is noted of that. */
const goneSlot = (then: MonthSlot, told: ToldNumber | undefined): MonthSlot =>
  told && told.sequence > (then.sequence ?? 0)
    ? { ...then, out: true, sequence: told.sequence, changedAt: told.changedAt }
    : then;

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
