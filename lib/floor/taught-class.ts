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
  /**
   * Where the difference came from, in words: the largest three, then all else, so that the seconds of them are those of the
   * whole.
   */
  readonly why: readonly string[];
}

/** Smaller differences are normal and not worth a word. Seconds. */
const WORTH_A_WORD = 3;
const MOST_REASONS = 3;

/**
 * `plan`: the signed plan that the log names. `shownOver`: whole seconds over as the reader sees them of the whole class;
 * undefined for a class that was ended early, which has no whole.
 */
export function taughtTimes(plan: Plan, log: ClassLog, shownOver?: number): TaughtTimes {
  const parts = new Map<string | null, ClassLogRow[]>();
  const keyOf = (row: ClassLogRow) => row.item ?? (row.phase === "closing" ? "closing " : "opening ");
  for (const row of log.rows) parts.set(keyOf(row), [...(parts.get(keyOf(row)) ?? []), row]);
  const rows = [...parts].map(([key, of]) => toldRow(key ?? "", nameOf(plan, of), of));
  const over = tenth(rows.reduce((sum, row) => sum + row.over, 0));
  return { rows, over, why: reasons(rows, shownOver) };
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

interface Reason {
  /** Whole seconds, as they are said; below 0: less. */
  readonly seconds: number;
  readonly words: string;
}

function reasons(rows: readonly TaughtRow[], shownOver: number | undefined): string[] {
  const named = rows
    .flatMap((row): Reason[] => {
      const { name, change, own, held } = row;
      if (row.leftOut) {
        const seconds = Math.round(row.over);
        return [{ seconds, words: FLOOR_SENTENCES.wasLeftOut(name, said(seconds)) }];
      }
      const whole = Math.round(held);
      return [
        { seconds: whole, words: FLOOR_SENTENCES.wasHeld(name, said(whole)) },
        took(change, `the change to ${name}`),
        took(own, name),
      ];
    })
    .filter(({ seconds }) => Math.abs(seconds) >= WORTH_A_WORD)
    .sort((a, b) => Math.abs(b.seconds) - Math.abs(a.seconds))
    .slice(0, MOST_REASONS);
  return [...named, ...allElse(named, shownOver)].map(({ words }) => words);
}

/** What is left of the whole once the named parts are taken from it, all as shown. Without parts the whole says it all. */
function allElse(named: readonly Reason[], shownOver: number | undefined): Reason[] {
  const rest = (shownOver ?? 0) - named.reduce((sum, { seconds }) => sum + seconds, 0);
  if (shownOver === undefined || named.length === 0 || rest === 0) return [];
  return [tookBy(rest, FLOOR_SENTENCES.allElse)];
}

const took = (time: TaughtRow["own"], what: string): Reason => tookBy(Math.round(time.took - time.planned), what);

const tookBy = (seconds: number, what: string): Reason => ({
  seconds,
  words: FLOOR_SENTENCES.tookOther(what, said(seconds), seconds > 0 ? "more" : "less"),
});

const said = (seconds: number): string => `${Math.abs(seconds)} s`;
