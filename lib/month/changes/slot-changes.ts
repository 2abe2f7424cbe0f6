/** What became of each class of a month between two states of it: a signed edition and the month now, or two editions. */
import { sameData } from "#lib/plan/same-data.ts";
import { byWallTime, expandMonth } from "../expand.ts";
import type { MonthFile, MonthSlot } from "../types.ts";

/** Date and start are one part: a class that is moved. */
export const SLOT_PARTS = [
  "moved",
  "minutes",
  "room",
  "coach",
  "plan",
  "theme",
  "regulars",
  "people",
  "note",
  "locked",
] as const;
export type ChangedPart = (typeof SLOT_PARTS)[number];

export interface ChangedSlot {
  readonly id: string;
  /** `called-off`: it was on and is out or no longer there. `on-again`: it was out. */
  readonly kind: "new" | "called-off" | "on-again" | "changed";
  /** What else differs, in the order of `SLOT_PARTS`; always something for `changed`, nothing for `new`. */
  readonly parts: readonly ChangedPart[];
  /** Null for `new`. */
  readonly was: MonthSlot | null;
  /** Null where it is no longer there. */
  readonly now: MonthSlot | null;
}

type Compared = Parameters<typeof expandMonth>[0] & Pick<MonthFile, "dates">;

/**
 * Every class that differs, the pattern's own included, by its time now (or then). A class that was out in both, or out in one
 * and not there in the other, is none. When it was changed and how often does not count.
 */
export function slotChanges(was: Compared, now: Compared): ChangedSlot[] {
  const before = byId(expandMonth(was));
  const after = byId(expandMonth(now));
  return [...new Set([...before.keys(), ...after.keys()])]
    .flatMap((id) => changeOf(id, before.get(id) ?? null, after.get(id) ?? null) ?? [])
    .sort(byTime);
}

const byId = (slots: readonly MonthSlot[]) => new Map(slots.map((slot) => [slot.id, slot]));
const isOn = (slot: MonthSlot | null): slot is MonthSlot => slot !== null && slot.out !== true;

function byTime(a: ChangedSlot, b: ChangedSlot): number {
  const [one, other] = [a.now ?? a.was, b.now ?? b.was];
  return one && other ? byWallTime(one, other) : 0;
}

function changeOf(id: string, was: MonthSlot | null, now: MonthSlot | null): ChangedSlot | undefined {
  if (!isOn(was) && !isOn(now)) return undefined;
  const parts = was && now ? SLOT_PARTS.filter((part) => !samePart(part, was, now)) : [];
  if (!isOn(now)) return { id, kind: "called-off", parts, was, now };
  if (!isOn(was)) return { id, kind: was === null ? "new" : "on-again", parts, was, now };
  return parts.length === 0 ? undefined : { id, kind: "changed", parts, was, now };
}

function samePart(part: ChangedPart, was: MonthSlot, now: MonthSlot): boolean {
  if (part === "moved") return was.date === now.date && was.start === now.start;
  if (part === "regulars") return sameData(sorted(was.regulars), sorted(now.regulars));
  if (part === "note") return (was.note ?? "") === (now.note ?? "");
  if (part === "locked") return (was.locked ?? false) === (now.locked ?? false);
  return (was[part] ?? null) === (now[part] ?? null);
}

const sorted = (ids: readonly string[] = []): string[] => [...ids].sort();

/** Those of from..to; the days before are only known as neighbours. */
export const withinMonth = (changes: readonly ChangedSlot[], { from }: MonthFile["dates"]): ChangedSlot[] =>
  changes.filter(({ was, now }) => [was, now].some((slot) => slot !== null && slot.date >= from));
