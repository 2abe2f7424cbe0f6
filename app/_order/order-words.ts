/** Words of *Fewer set-ups*: kinds of acts, what holds an item, what the order brings. Pure. */

import { placedName } from "#app/_session/placed-name.ts";
import { secondsWords } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Action, Plan } from "#lib/plan/schema.ts";
import type { ActionCounts } from "#lib/transitions/transitions.ts";
import type { FoundOrder } from "./preview.ts";

const KINDS: readonly { readonly words: string; readonly actions: readonly Action[] }[] = [
  { words: "springs on or off", actions: ["springOn", "springOff"] },
  { words: "carriage home", actions: ["carriageHome"] },
  { words: "quarter turns", actions: ["quarterTurn"] },
  { words: "changes of position", actions: ["positionChange"] },
  { words: "changes of station", actions: ["stationChange"] },
  { words: "handles up, down or crossed", actions: ["handleUp", "handleDown", "handlesCross"] },
  { words: "straps on or off", actions: ["strapOn", "strapOff"] },
  { words: "changes of grip", actions: ["gripChange"] },
];

interface KindRow {
  readonly words: string;
  readonly before: number;
  readonly after: number;
}

/** One row a kind of act that either order asks for. */
export function kindRows({ actionsBefore, actionsAfter }: FoundOrder): KindRow[] {
  const count = (actions: ActionCounts, kind: readonly Action[]) =>
    kind.reduce((sum, action) => sum + (actions[action] ?? 0), 0);
  return KINDS.map(({ words, actions }) => ({
    words,
    before: count(actionsBefore, actions),
    after: count(actionsAfter, actions),
  })).filter(({ before, after }) => before > 0 || after > 0);
}

/** "Row, left stays right behind Row, right." */
export function holdWords(plan: Plan, hold: FoundOrder["heldBy"][number]): string {
  const name = (id: string): string => {
    const item = itemById(plan, id);
    return item ? placedName(plan, item) : id;
  };
  const places = new Map(plan.items.map((item, i) => [item.id, i]));
  if (hold.by === "after") return `${name(hold.item)} comes after ${name(hold.other)}.`;
  const behind = (places.get(hold.other) ?? -1) < (places.get(hold.item) ?? -1);
  return `${name(hold.item)} stays right ${behind ? "below" : "above"} ${name(hold.other)}.`;
}

export const provenWords = (proven: boolean): string =>
  proven
    ? "Proven: no other order of this block takes fewer seconds."
    : "The best order found. The block is too long to try every order, so a better one may exist.";

/** "38 s less to change", "4 s more to change". */
export function savedWords({ before, after }: { readonly before: number; readonly after: number }): string {
  const saved = before - after;
  if (saved === 0) return "as many seconds to change";
  return saved > 0 ? `${secondsWords(saved)} less to change` : `${secondsWords(-saved)} more to change`;
}

/** "from 5th to 2nd place". */
export const movedPlaceWords = (from: number, to: number): string => `from ${ordinal(from)} to ${ordinal(to)} place`;

export function ordinal(n: number): string {
  const teens = n % 100 >= 11 && n % 100 <= 13;
  const end = teens ? "th" : (["th", "st", "nd", "rd"][n % 10] ?? "th");
  return `${n}${end}`;
}
