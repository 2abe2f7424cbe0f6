/** Classes of a month taught against planned, counted by whatever they have in common. */
import type { TaughtEnd } from "./taught.ts";

/** A planned class that is over, and what became of it. */
export interface ClassOutcome {
  readonly minutes: number;
  /** Of the logs that count; `none` where there is none. The best of several: an abandoned start may have been begun again. */
  readonly end: TaughtEnd | "none";
  readonly theme: string | null;
  /** Who led it, else who was to. */
  readonly coach: string | null;
  readonly regulars: readonly string[];
}

export interface TaughtSum {
  readonly planned: number;
  readonly taught: number;
  readonly abandoned: number;
  readonly noLog: number;
  readonly plannedMinutes: number;
  /** Booked minutes of those that were taught. */
  readonly taughtMinutes: number;
}

export const NOTHING_TAUGHT: TaughtSum = {
  planned: 0,
  taught: 0,
  abandoned: 0,
  noLog: 0,
  plannedMinutes: 0,
  taughtMinutes: 0,
};

const BEST: readonly ClassOutcome["end"][] = ["whole", "early", "abandoned", "none"];

export const bestEnd = (ends: readonly TaughtEnd[]): ClassOutcome["end"] =>
  BEST.find((end) => end === "none" || ends.includes(end)) ?? "none";

export function taughtSum(classes: readonly ClassOutcome[]): TaughtSum {
  const ended = (...ends: ClassOutcome["end"][]) => classes.filter(({ end }) => ends.includes(end));
  const minutes = (of: readonly ClassOutcome[]) => of.reduce((sum, one) => sum + one.minutes, 0);
  const taught = ended("whole", "early");
  return {
    planned: classes.length,
    taught: taught.length,
    abandoned: ended("abandoned").length,
    noLog: ended("none").length,
    plannedMinutes: minutes(classes),
    taughtMinutes: minutes(taught),
  };
}

/** By id; "" for those that have none. */
export function taughtSumsBy(
  classes: readonly ClassOutcome[],
  idsOf: (one: ClassOutcome) => readonly (string | null)[],
): Map<string, TaughtSum> {
  const by = new Map<string, ClassOutcome[]>();
  for (const one of classes) {
    const ids = idsOf(one);
    for (const id of ids.length > 0 ? ids : [null]) by.set(id ?? "", [...(by.get(id ?? "") ?? []), one]);
  }
  return new Map([...by].map(([id, own]) => [id, taughtSum(own)]));
}
