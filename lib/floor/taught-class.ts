/** A class log made readable next to its plan: a row per item with its change, and words for where time was gained or lost. */
import { tenth } from "#lib/numbers/round.ts";
import { itemName } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { ClassLog, ClassLogRow } from "./class-log-schema.ts";
import { FLOOR_SENTENCES } from "./floor-sentences.ts";

export interface TaughtRow {
  readonly key: string;
  readonly name: string;
  /** Seconds of the change into it; both 0 when there is none. */
  readonly change: { readonly planned: number; readonly took: number };
  /** Seconds of the item itself, or of the opening or the closing. */
  readonly own: { readonly planned: number; readonly took: number };
  /** Seconds held in the change or in the item. */
  readonly held: number;
  /** Seconds more (or, below 0, less) than planned, holds included. */
  readonly over: number;
  /** Planned but not done at all. */
  readonly leftOut: boolean;
}
export interface TaughtTimes {
  readonly rows: readonly TaughtRow[];
  /** Seconds the class took more than planned; below 0: less. */
  readonly over: number;
  /** Where most of the difference came from, in words, largest first; at most three. */
  readonly why: readonly string[];
}

/** Smaller differences are normal and not worth a word. Seconds. */
const WORTH_A_WORD = 3;

/** `plan`: the signed plan that the log names. */
export function taughtTimes(plan: Plan, log: ClassLog): TaughtTimes {
  const parts = new Map<string | null, ClassLogRow[]>();
  const keyOf = (row: ClassLogRow) => row.item ?? (row.phase === "closing" ? "closing " : "opening ");
  for (const row of log.rows) parts.set(keyOf(row), [...(parts.get(keyOf(row)) ?? []), row]);
  const rows = [...parts].map(([key, of]) => toldRow(key ?? "", nameOf(plan, of), of));
  const over = tenth(rows.reduce((sum, row) => sum + row.over, 0));
  return { rows, over, why: reasons(rows) };
}

function nameOf(plan: Plan, [first]: readonly ClassLogRow[]): string {
  if (!first || first.item === null) return first?.phase === "closing" ? "Closing" : "Opening";
  const item = plan.items.find(({ id }) => id === first.item);
  return item ? itemName(plan, item) : first.item;
}

function toldRow(key: string, name: string, of: readonly ClassLogRow[]): TaughtRow {
  const change = of.find((row) => row.phase === "change");
  const own = of.find((row) => row.phase !== "change");
  const sum = (read: (row: ClassLogRow) => number) => tenth(of.reduce((total, row) => total + read(row), 0));
  return {
    key,
    name,
    change: { planned: change?.planned ?? 0, took: change?.took ?? 0 },
    own: { planned: own?.planned ?? 0, took: own?.took ?? 0 },
    held: sum((row) => row.held),
    over: sum((row) => row.took + row.held - row.planned),
    leftOut: (own?.planned ?? 0) > 0 && sum((row) => row.took + row.held) === 0,
  };
}

function reasons(rows: readonly TaughtRow[]): string[] {
  const all = rows.flatMap((row) => {
    const { name, change, own, held } = row;
    if (row.leftOut) return [{ seconds: -row.over, words: FLOOR_SENTENCES.wasLeftOut(name, said(-row.over)) }];
    return [
      { seconds: held, words: FLOOR_SENTENCES.wasHeld(name, said(held)) },
      { seconds: Math.abs(change.took - change.planned), words: more(change, `the change to ${name}`) },
      { seconds: Math.abs(own.took - own.planned), words: more(own, name) },
    ];
  });
  const worth = all.filter(({ seconds }) => seconds >= WORTH_A_WORD).sort((a, b) => b.seconds - a.seconds);
  return worth.slice(0, 3).map(({ words }) => words);
}

function more({ planned, took }: TaughtRow["own"], what: string): string {
  const by = took - planned;
  return FLOOR_SENTENCES.tookOther(what, said(Math.abs(by)), by > 0 ? "more" : "less");
}

const said = (seconds: number): string => `${Math.round(seconds)} s`;
