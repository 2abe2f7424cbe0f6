/** A class in small: when its moves and pauses begin and how long they last. For lists, which do not read the plan. Pure. */
import { isMoveItem, moveOf } from "#lib/plan/lookup.ts";
import { type Move, PATTERNS, type Plan } from "#lib/plan/schema.ts";
import type { ClockRow } from "./clock.ts";

/** Seconds. `pattern` is null for a pause, and for a move that nobody knows. */
export interface StripPart {
  readonly from: number;
  readonly seconds: number;
  readonly pattern: Move["pattern"] | null;
}

export function classStrip(plan: Plan, rows: readonly ClockRow[]): StripPart[] {
  return plan.items.flatMap((item, i) => {
    const row = rows[i];
    if (item.kind === "heading" || !row) return [];
    const pattern = isMoveItem(item) ? (moveOf(plan, item)?.pattern ?? null) : null;
    return [{ from: Math.round(row.start), seconds: Math.round(row.end - row.start), pattern }];
  });
}

/** A list draws no more of a class: the rest would be thinner than a pixel. */
const MOST = 300;

/** As one short text: "60 45 push, 111 60 pull". */
export const stripText = (strip: readonly StripPart[]): string =>
  strip
    .slice(0, MOST)
    .map(({ from, seconds, pattern }) => `${from} ${seconds} ${pattern ?? "-"}`)
    .join(",");

/** Parts that cannot be read are left out. */
export function readStrip(text: string): StripPart[] {
  return text.split(",").flatMap((part) => {
    const [from, seconds, name] = part.split(" ");
    const at = { from: Number(from), seconds: Number(seconds) };
    if (name === undefined || !Number.isFinite(at.from) || !(at.seconds > 0)) return [];
    return [{ ...at, pattern: PATTERNS.find((pattern) => pattern === name) ?? null }];
  });
}
