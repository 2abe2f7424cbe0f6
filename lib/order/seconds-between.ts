/** Seconds of the change from the end of one unit to the start of the next. */
import type { Plan } from "#lib/plan/schema.ts";
import { changeBetween, type Setup } from "#lib/transitions/transitions.ts";

export interface UnitRow {
  readonly above: Setup | null;
  readonly units: readonly (readonly Setup[])[];
  readonly below: Setup | null;
}

/**
 * Seconds from the end of one unit to the start of the next; 0 where one side has no move. Worked out on first use for each
 * pair of different set-ups, since with thousands of items not all pairs are needed.
 */
export function secondsBetween(plan: Plan, { above, units, below }: UnitRow): (unit: number, next: number) => number {
  const kinds = new Kinds();
  const starts = [...units.map((unit) => unit[0] ?? null), below].map((setup) => kinds.of(setup));
  const ends = [...units.map((unit) => unit.at(-1) ?? null), above].map((setup) => kinds.of(setup));
  const { list } = kinds;
  // Holds the seconds plus one; 0 means not worked out yet.
  const found = new Int32Array(list.length ** 2);
  return (unit: number, next: number): number => {
    const [a, b] = [ends[unit] ?? 0, starts[next] ?? 0];
    const at = a * list.length + b;
    const seconds = found[at] ?? 0;
    if (seconds > 0) return seconds - 1;
    const { estimate } = changeBetween(plan, list[a] ?? null, list[b] ?? null);
    found[at] = estimate + 1;
    return estimate;
  };
}

/** Numbers the different set-ups. */
class Kinds {
  readonly list: (Setup | null)[] = [];
  private readonly numbers = new Map<string, number>();

  of(setup: Setup | null): number {
    const key = setup ? keyOf(setup) : "";
    const known = this.numbers.get(key);
    if (known !== undefined) return known;
    this.list.push(setup);
    this.numbers.set(key, this.list.length - 1);
    return this.list.length - 1;
  }
}

/** The same text for equal set-ups. Ids of springs have no spaces. */
function keyOf({ springs, station, position, facing, hands, feet, side }: Setup): string {
  const on = Object.keys(springs).filter((id) => (springs[id] ?? 0) > 0);
  const counts = on.sort().map((id) => `${id} ${springs[id]}`);
  return [station, position, facing, hands, feet, side, ...counts].join(" ");
}
