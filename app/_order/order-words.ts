/** The sentences of *Fewer set-ups*, fetched with its dialog. Pure. */

import { placedName } from "#app/_session/placed-name.ts";
import { changeWords } from "#lib/clock/length-words.ts";
import { agree, plural, secondsWords } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Action, Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import type { ActionCounts } from "#lib/transitions/transitions.ts";
import { afterWords } from "./hold-words.ts";
import type { FoundOrder, OrderPreview } from "./preview.ts";

export const UP_TO_DATE = "the order below is up to date";
export const NOTHING_HELD = "No item of this block is held in place.";
export const REREAD_SET_UP_LINES =
  "Read the set-up lines again after taking it: the move they announce may no longer come next.";

const KINDS: readonly { readonly words: string; readonly actions: readonly Action[] }[] = [
  { words: "springs on or off", actions: ["springOn", "springOff"] },
  { words: "carriage home", actions: ["carriageHome"] },
  { words: "quarter turns", actions: ["quarterTurn"] },
  { words: "changes of position", actions: ["positionChange"] },
  { words: "changes of station", actions: ["stationChange"] },
  { words: "handles up, down or crossed", actions: ["handleUp", "handleDown", "handlesCross"] },
  { words: "straps on or off", actions: ["strapOn", "strapOff"] },
  { words: "changes of grip", actions: ["gripChange"] },
  { words: "changes of side", actions: ["sideChange"] },
];

interface KindRow {
  readonly words: string;
  readonly before: number;
  readonly after: number;
}

/** One row for each kind of action that either order asks for. */
export function kindRows({ actionsBefore, actionsAfter }: FoundOrder): KindRow[] {
  const count = (actions: ActionCounts, kind: readonly Action[]) =>
    kind.reduce((sum, action) => sum + (actions[action] ?? 0), 0);
  return KINDS.map(({ words, actions }) => ({
    words,
    before: count(actionsBefore, actions),
    after: count(actionsAfter, actions),
  })).filter(({ before, after }) => before > 0 || after > 0);
}

/** "Row, left stays right below Row, right." */
export function holdWords(plan: Plan, hold: FoundOrder["heldBy"][number]): string {
  const name = (id: string): string => {
    const item = itemById(plan, id);
    return item ? placedName(plan, item) : id;
  };
  const places = new Map(plan.items.map((item, i) => [item.id, i]));
  if (hold.by === "after") return afterWords(name(hold.item), name(hold.other), true);
  const behind = (places.get(hold.other) ?? -1) < (places.get(hold.item) ?? -1);
  return `${name(hold.item)} stays right ${behind ? "below" : "above"} ${name(hold.other)}.`;
}

/** What holding the items in place costs, in estimated seconds; `unheld` null: nothing. */
export const holdCostWords = (held: number, unheld: number | null): string =>
  unheld === null
    ? "This costs no time."
    : `Without this, the changes would take ${secondsWords(unheld)}, ${secondsWords(held - unheld)} less.`;

export const provenWords = (proven: boolean): string =>
  proven
    ? "Proven: no other order of this block takes fewer seconds."
    : "The best order found. The block is too long to try every order, so a better one may exist.";

/** Why there is no order to take. */
export function nothingBetterWords({ order, present }: OrderPreview): string {
  const moves = present.lines.filter((line) => line.item.kind === "move").length;
  if (moves < 2) return "This block has fewer than two moves, so there is nothing to reorder.";
  const now = `the changes take ${secondsWords(order.before)}`;
  return order.proven
    ? `No other order takes fewer seconds: ${now}, and every possible order was tried.`
    : `No better order was found: ${now}. The block is too long to try every order.`;
}

/** "38 s less for changes", "4 s more for changes". */
export function savedWords({ before, after }: { readonly before: number; readonly after: number }): string {
  const saved = before - after;
  if (saved === 0) return "as many seconds for changes";
  return saved > 0 ? `${secondsWords(saved)} less for changes` : `${secondsWords(-saved)} more for changes`;
}

export const movesAndSecondsWords = ({ order, moved }: OrderPreview): string =>
  `${plural(moved.length, "item moves", "items move")}. Changes into, within and out of the block: ${secondsWords(order.before)} now, ${secondsWords(order.after)} then, by estimate.`;

export const takenOrderWords = ({ order, moved, clock }: OrderPreview): string =>
  `${plural(moved.length, "item")} moved: ${savedWords(order)}, ${changeWords(clock.before, clock.after)} on the clock.`;

/** Planned times that were meant for the changes of the old order. */
export const stalePlannedWords = (names: readonly string[]): string =>
  `${plural(names.length, "change has", "changes have")} a planned time that was meant for the old order: ${names.join("; ")}.`;

export const dropPlannedWords = (count: number): string =>
  agree(count, "Drop this planned time and use the estimate", "Drop these planned times and use the estimates");

export const findingsComparedWords = ({ before, after, added, gone }: OrderPreview["findings"]): string =>
  `${plural(before, "finding")} now, ${after} in the new order: ${countWords(added, "new")}, ${countWords(gone, "gone")}.`;

/** "none new", "3 gone", "4 new (1 must fix)". */
function countWords(findings: readonly Finding[], what: string): string {
  const must = findings.filter((finding) => finding.level === "must").length;
  return `${findings.length === 0 ? "none" : findings.length} ${what}${must > 0 ? ` (${must} must fix)` : ""}`;
}

/** What a block is, where there is none to reorder; `above`: the chosen item, where it is above the first heading. */
export const noBlockWords = (above: string | undefined, hasHeadings: boolean): string =>
  `A block is everything under one heading. ${missing(above, hasHeadings)} Items may change places within their block to save set-up time; nothing leaves its block.`;

function missing(above: string | undefined, hasHeadings: boolean): string {
  if (!hasHeadings) return "This class has no heading yet: put one above the moves that belong together.";
  return above === undefined
    ? "Choose one below."
    : `${above} is above the first heading: put a heading above it, or choose a block below.`;
}

/** "from 5th to 2nd place". */
export const movedPlaceWords = (from: number, to: number): string => `from ${ordinal(from)} to ${ordinal(to)} place`;

export function ordinal(n: number): string {
  const teens = n % 100 >= 11 && n % 100 <= 13;
  const end = teens ? "th" : (["th", "st", "nd", "rd"][n % 10] ?? "th");
  return `${n}${end}`;
}
