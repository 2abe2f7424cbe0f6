/**
 * The best order of a block written for a mixed-integer solver, straight from the plan file format: one
 * binary for "b comes right after a", places that rise along the line (Miller, Tucker and Zemlin, "Integer programming
 * formulation of traveling salesman problems", J. ACM 7(4), 1960), ties as arcs that are taken, waits as places.
 */
import type { MoveItem } from "#lib/plan/schema.ts";

export interface OrderModel {
  readonly items: readonly MoveItem[];
  /** Seconds from one item to the next; row and column `items.length` stand for what is before and after. */
  readonly seconds: readonly (readonly number[])[];
}

/** In CPLEX LP format. */
export function orderLp({ items, seconds }: OrderModel): string {
  const n = items.length;
  const all = [...items.keys(), n];
  const arcs = all.flatMap((a) => all.filter((b) => a !== b).map((b) => ({ a, b, name: `x${a}_${b}` })));
  const sum = (list: readonly { name: string }[]): string => list.map(({ name }) => `+ ${name}`).join("\n");
  const from = all.map((u) => `from${u}: ${sum(arcs.filter(({ a }) => a === u))} = 1`);
  const to = all.map((u) => `to${u}: ${sum(arcs.filter(({ b }) => b === u))} = 1`);
  const inside = arcs.filter(({ a, b }) => a < n && b < n);
  const places = inside.map(({ a, b, name }) => `place${a}_${b}: p${a} - p${b} + ${n} ${name} <= ${n - 1}`);
  const waits = items.flatMap((item, u) =>
    (item.after ?? []).map((id, i) => `wait${u}_${i}: p${u} - p${items.findIndex((it) => it.id === id)} >= 1`),
  );
  const ties = items.flatMap((item, u) => {
    const before = items.slice(0, u).findLastIndex((other) => other.keep !== undefined && other.keep === item.keep);
    return before < 0 ? [] : [`tie${u}: x${before}_${u} = 1`];
  });
  return [
    `Minimize\nobj: ${arcs.map(({ a, b, name }) => `+ ${seconds[a]?.[b] ?? 0} ${name}`).join("\n")}`,
    "Subject To",
    ...from,
    ...to,
    ...places,
    ...waits,
    ...ties,
    "Bounds",
    ...items.map((_, u) => `1 <= p${u} <= ${n}`),
    `Binaries\n${arcs.map(({ name }) => name).join("\n")}\nEnd`,
  ].join("\n");
}
