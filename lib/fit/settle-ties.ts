/**
 * Chooses among equally cheap answers with the same sum: the one whose first item is nearer to its wish, then the second,
 * and so on. If a choice is still left (wishes half-way between two times), the earlier item gets the shorter time.
 */
import { EQUAL, type Stage } from "./stage.ts";
import type { Variable } from "./values.ts";

/** An answer as far as it is decided. */
interface Path {
  /** Seconds of the variables so far. */
  readonly values: readonly number[];
  /** Units and cost left for the others. */
  readonly units: number;
  readonly left: number;
}
/** Most answers kept at once while only later items can decide between them. */
const MOST_PATHS = 256;

/** Goes through the items in plan order. Variables are in the order of their first items. */
export function settleTies(variables: readonly Variable[], stages: readonly Stage[], units: number): number[] {
  const first = stages[0];
  let paths: Path[] = [{ values: [], units, left: first?.rest[units - first.from] ?? 0 }];
  const spots = variables.flatMap((v, at) => v.spots.map((spot, nth) => ({ ...spot, at, nth })));
  for (const { at, nth, wish } of spots.sort((a, b) => a.place - b.place)) {
    const stage = stages[at];
    if (nth === 0 && stage) paths = paths.flatMap((path) => longer(path, stage, stages[at + 1]));
    paths = nearest(paths, at, wish);
    if (nth === 0) paths = merged(paths, variables).slice(0, MOST_PATHS);
  }
  return [...(paths[0]?.values ?? [])];
}

function longer({ values, units, left }: Path, stage: Stage, next: Stage | undefined): Path[] {
  return stage.choices.flatMap(({ seconds, above, units: own }): Path[] => {
    const rest = units - own;
    const after = next
      ? (next.rest[rest - next.from] ?? Number.POSITIVE_INFINITY)
      : rest === 0
        ? 0
        : Number.POSITIVE_INFINITY;
    if (above + after > left + EQUAL) return [];
    return [{ values: [...values, seconds], units: rest, left: left - above }];
  });
}

function nearest(paths: readonly Path[], at: number, wish: number): Path[] {
  const away = ({ values }: Path): number => Math.abs((values[at] ?? wish) - wish);
  const least = Math.min(...paths.map(away));
  return paths.filter((path) => away(path) <= least + EQUAL);
}

/** Of paths that are equal for all later items, keeps the first: its time is shorter at the first difference. */
function merged(paths: readonly Path[], variables: readonly Variable[]): Path[] {
  if (paths.length < 2) return [...paths];
  const seen = new Map<string, Path>();
  for (const path of [...paths].sort((a, b) => firstDifference(a.values, b.values))) {
    const pending = path.values.filter((_, i) => (variables[i]?.spots.length ?? 1) > 1);
    const key = `${path.units} ${pending.join(" ")}`;
    if (!seen.has(key)) seen.set(key, path);
  }
  return [...seen.values()];
}

function firstDifference(a: readonly number[], b: readonly number[]): number {
  const i = a.findIndex((x, k) => x !== b[k]);
  return i < 0 ? 0 : (a[i] ?? 0) - (b[i] ?? 0);
}
