/**
 * What may be left out of the rest of a class, in the order to try it: nothing, then one move, then two, and so on. Among
 * sets of one size the one with the least work comes first, then the one later in the class. Both sides of a pair go
 * together, a side is kept once its other side has begun, and locked moves go last.
 */
import { classClock } from "#lib/clock/clock.ts";
import { moveItems } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { otherSides } from "./rest-of-class.ts";

interface Unit {
  readonly items: readonly string[];
  readonly seconds: number;
  readonly locked: boolean;
}

/** Above two, moves are added one by one: trying every choice would take too long while a class runs. */
const EXACT_UNITS = 2;

/** Sets of item ids in plan order. The first is empty. */
export function* dropSets(plan: Plan, position: number): Generator<readonly string[]> {
  const units = unitsOf(plan, position);
  const order = new Map(plan.items.map((item, n) => [item.id, n]));
  const ids = (set: readonly Unit[]) =>
    set.flatMap((unit) => unit.items).sort((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0));
  for (let size = 0; size <= Math.min(EXACT_UNITS, units.length); size++) {
    const sets = choose(units, size).sort((a, b) => locks(a) - locks(b) || seconds(a) - seconds(b));
    for (const set of sets) yield ids(set);
  }
  const longest = [...units].sort((a, b) => Number(a.locked) - Number(b.locked) || b.seconds - a.seconds);
  for (let size = EXACT_UNITS + 1; size <= units.length; size++) yield ids(longest.slice(0, size));
}

const seconds = (set: readonly Unit[]): number => set.reduce((sum, unit) => sum + unit.seconds, 0);
const locks = (set: readonly Unit[]): number => set.filter((unit) => unit.locked).length;

/** In reverse order, so that among equal sets the one with the later moves is tried first. */
function unitsOf(plan: Plan, position: number): Unit[] {
  const others = otherSides(plan);
  const rows = new Map(classClock(plan).rows.map((row) => [row.item, row]));
  const toCome = (id: string) => (rows.get(id)?.transitionFrom ?? 0) > position;
  const units = moveItems(plan).flatMap((item, n, all): Unit[] => {
    const other = others.get(item.id);
    if (!toCome(item.id) || (other && !toCome(other.id))) return [];
    const pair = other ? [item, other] : [item];
    if (other && all.indexOf(other) < n) return [];
    return [
      {
        items: pair.map(({ id }) => id),
        seconds: pair.reduce((sum, member) => sum + member.seconds, 0),
        locked: pair.some((member) => member.locked === true),
      },
    ];
  });
  return units.reverse();
}

/** All choices of `size` of the units. */
function choose<T>(units: readonly T[], size: number): T[][] {
  if (size === 0) return [[]];
  return units.flatMap((unit, n) => choose(units.slice(n + 1), size - 1).map((rest) => [unit, ...rest]));
}
