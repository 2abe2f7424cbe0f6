/**
 * How hard a class is, by the METs of its moves: the arc over time, minutes light, moderate and vigorous, MET-minutes
 * and energy. METs are averages over groups of people. There is no published value for work on a sliding carriage with
 * springs, so each move's MET is the studio's judgement. Strength work feels harder than its MET suggests.
 */

import { type ClassClock, classClock } from "#lib/clock/clock.ts";
import { withoutNoise } from "#lib/numbers/round.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";

/** rest: the plan asks for no work there. */
export type IntensityLevel = "rest" | "very-light" | "light" | "moderate" | "vigorous";
/** A stretch of the class on the clock, seconds from its start. */
export interface IntensityPart {
  /** The move item worked in, or the item whose change or pause it is; null for the opening and the closing. */
  readonly item: string | null;
  readonly work: boolean;
  readonly from: number;
  readonly to: number;
  /** Null when the move has none; it is not guessed. */
  readonly met: number | null;
  readonly level: IntensityLevel | null;
}

export interface ClassIntensity {
  /** The whole class without gaps, in order of time; parts of no length are left out. */
  readonly arc: readonly IntensityPart[];
  /** Sum of MET x minutes over every part whose MET is known. */
  readonly metMinutes: number;
  readonly seconds: Readonly<Record<IntensityLevel, number>>;
  /** Work without a known MET, which counts in none of the sums. */
  readonly unknown: { readonly seconds: number; readonly items: readonly string[] };
  /** Energy per kilogram of body weight, by `energyKcal`, over the parts whose MET is known. */
  readonly kcalPerKg: number;
}

/**
 * The opening, changes, pauses and the closing count 1 MET, the value of sitting still. People move and set up in that time,
 * so the sums are a lower bound.
 */
const REST_MET = 1;

/**
 * The lowest MET of a level for adults: light 2.0-2.9, moderate 3.0-5.9, vigorous from 6.0 (F&S Reports 4(2):150-158,
 * 2023, table 1).
 */
const FROM_MET = { light: 2, moderate: 3, vigorous: 6 } as const;

export function levelOf(met: number): Exclude<IntensityLevel, "rest"> {
  if (met >= FROM_MET.vigorous) return "vigorous";
  if (met >= FROM_MET.moderate) return "moderate";
  return met >= FROM_MET.light ? "light" : "very-light";
}

/**
 * kcal = MET x 3.5 x kg / 200 x minutes: 1 MET is 3.5 ml of oxygen per kilogram and minute, and a litre of oxygen gives
 * 5 kcal. The other common formula, MET x kg x hours, gives a twentieth less.
 */
export function energyKcal(of: { met: number; kg: number; minutes: number }): number {
  return ((of.met * 3.5 * of.kg) / 200) * of.minutes;
}

/** The intensity of a class. Never throws. */
export function classIntensity(plan: Plan): ClassIntensity {
  const arc = intensityArc(plan, classClock(plan));
  const seconds = { rest: 0, "very-light": 0, light: 0, moderate: 0, vigorous: 0 };
  let metSeconds = 0;
  for (const part of arc) {
    if (part.met === null || part.level === null) continue;
    seconds[part.level] += part.to - part.from;
    metSeconds += part.met * (part.to - part.from);
  }
  const unknown = arc.filter((part) => part.met === null);
  const metMinutes = withoutNoise(metSeconds / 60);
  return {
    arc,
    metMinutes,
    seconds: {
      rest: withoutNoise(seconds.rest),
      "very-light": withoutNoise(seconds["very-light"]),
      light: withoutNoise(seconds.light),
      moderate: withoutNoise(seconds.moderate),
      vigorous: withoutNoise(seconds.vigorous),
    },
    unknown: {
      seconds: withoutNoise(unknown.reduce((sum, part) => sum + part.to - part.from, 0)),
      items: unknown.flatMap((part) => (part.item === null ? [] : [part.item])),
    },
    kcalPerKg: energyKcal({ met: metMinutes, kg: 1, minutes: 1 }),
  };
}

/** The arc of a class on its clock. */
export function intensityArc(plan: Plan, { rows, total }: ClassClock): IntensityPart[] {
  const parts: IntensityPart[] = [];
  const first = rows[0]?.transitionFrom ?? 0;
  const lastEnd = rows.at(-1)?.end ?? first;
  parts.push(rest(null, 0, first));
  plan.items.forEach((item, i) => {
    const row = rows[i];
    if (!row || item.kind === "heading") return;
    parts.push(rest(item.id, row.transitionFrom, row.start));
    if (item.kind === "pause") {
      parts.push(rest(item.id, row.start, row.end));
      return;
    }
    const met = moveOf(plan, item)?.met ?? null;
    const level = met === null ? null : levelOf(met);
    parts.push({ item: item.id, work: true, from: row.start, to: row.end, met, level });
  });
  parts.push(rest(null, lastEnd, total));
  return parts.filter((part) => part.to > part.from);
}

const rest = (item: string | null, from: number, to: number): IntensityPart => ({
  item,
  work: false,
  from,
  to,
  met: REST_MET,
  level: "rest",
});
