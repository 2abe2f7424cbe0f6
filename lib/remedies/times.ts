/**
 * Fixes of an item's time. They offer only a time that the next fit to length would keep: each candidate is tried with the
 * fit, and the first that it leaves alone is offered. In a class that cannot be fitted, any candidate will do.
 */
import { fitToLength, fittedPlan } from "#lib/fit/fit.ts";
import { variableFor } from "#lib/fit/problem.ts";
import { isWhole, type Variable, valuesWithin } from "#lib/fit/values.ts";
import { secondsWords } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import type { Remedy } from "./remedy.ts";

/** Most fits tried for one offer, since each takes some milliseconds. */
const TRIES = 3;

/** A time of whole repetitions: the fit's own, else the nearest; the longer of two equally near. */
export function wholeReps(plan: Plan, finding: Finding): Remedy | null {
  const found = lengthOf(plan, finding);
  if (!found?.free.rep) return null;
  const { item, free } = found;
  return firstKept(plan, item, free, wholes(free));
}

/** The nearest time within the range, of whole repetitions if possible. */
export function intoRange(plan: Plan, finding: Finding): Remedy | null {
  const found = lengthOf(plan, finding);
  const { shortestSeconds: low, longestSeconds: high } = finding.values;
  if (!found || typeof low !== "number" || typeof high !== "number") return null;
  const { item } = found;
  if (item.seconds >= low && item.seconds <= high) return null;
  // Without a range, the fit takes its bounds from the present time, which is the wrong one: use the studio's limits.
  const free = item.range || plan.moves[item.move]?.seconds ? found.free : { ...found.free, low, high };
  const whole = wholes(free);
  return firstKept(plan, item, free, whole.length > 0 ? whole : valuesWithin(free, free.low, free.high));
}

const wholes = (free: Variable): number[] => {
  const { rep } = free;
  return valuesWithin(free, free.low, free.high).filter((seconds) => rep === null || isWhole(seconds, rep));
};

/** The one move of a finding and the times it may take; undefined where its own lock or its other side's keeps its time. */
function lengthOf(plan: Plan, finding: Finding): { item: MoveItem; free: Variable } | undefined {
  const [id] = finding.items;
  const item = id === undefined || finding.items.length !== 1 ? undefined : itemById(plan, id);
  if (item?.kind !== "move" || item.locked) return undefined;
  const free = variableFor(plan, item);
  return free && { item, free };
}

function firstKept(plan: Plan, item: MoveItem, free: Variable, times: readonly number[]): Remedy | null {
  const near = (seconds: number): number => Math.abs(seconds - item.seconds);
  const nearest = times.filter((t) => t !== item.seconds).sort((a, b) => near(a) - near(b) || b - a);
  const fit = fitToLength(plan);
  const fits = fit.possible ? fit.changed.find((change) => change.item === item.id)?.to : undefined;
  const tries = [...nearest.filter((t) => t === fits), ...nearest.filter((t) => t !== fits)].slice(0, TRIES);
  const kept = tries.find((seconds) => keeps(withTime(plan, free, seconds), item, seconds));
  return kept === undefined ? null : offer(plan, free, kept);
}

function keeps(plan: Plan, { id }: MoveItem, seconds: number): boolean {
  const fit = fitToLength(plan);
  const fitted = fit.possible ? itemById(fittedPlan(plan, fit), id) : undefined;
  return !fit.possible || (fitted?.kind === "move" && fitted.seconds === seconds);
}

function withTime(plan: Plan, { spots }: Variable, seconds: number): Plan {
  const places = new Set(spots.map(({ place }) => place));
  const items = plan.items.map((it, place) => (it.kind === "move" && places.has(place) ? { ...it, seconds } : it));
  return { ...plan, items };
}

/** Both sides of a move share their time. */
function offer(plan: Plan, { spots }: Variable, value: number): Remedy {
  const changes = spots.flatMap(({ place }) => {
    const item = plan.items[place];
    return item?.kind === "move" ? [{ itemId: item.id, field: "seconds" as const, value }] : [];
  });
  return { label: `${spots.length > 1 ? "Make both" : "Make it"} ${secondsWords(value)}`, changes };
}
