/**
 * What holds an item in its place: tying it to the move above, or naming what it comes after. A tie is one id on each
 * of its items: when two people tie one item to different neighbours at the same moment one wins, and the other sees
 * it. What an item comes after is held in flat keys, so all that two people name at once is kept.
 */

import { moveItemSchema } from "#lib/plan/schema.ts";
import { tieOf } from "#lib/plan/ties.ts";
import { AFTER_KEY, type ItemMap } from "./layout.ts";
import { readItems } from "./read.ts";
import { setOrDelete } from "./set.ts";
import { stored } from "./stored.ts";
import { act, setItemField, type Writer, withItem } from "./write.ts";

/**
 * Ties an item to the one above it; where both are already tied the two ties become one. `fresh` is the id of a new
 * tie.
 */
export function tieItems(w: Writer, aboveId: string, id: string, fresh: string): void {
  const plan = { items: readItems(w.doc) };
  const [above, item] = [moveIn(plan, aboveId), moveIn(plan, id)];
  if (!above || !item || above === item) return;
  const own = tieOf(plan, item);
  const tie = nonEmpty(tieOf(plan, above)) ? above.keep : nonEmpty(own) ? item.keep : fresh;
  act(w, () => {
    for (const member of [above, item, ...own]) setItemField(w, member.id, "keep", tie);
  });
}

/** Separates an item, and those of its tie below it, from those above it. `fresh` is the id of a new tie. */
export function splitTie(w: Writer, id: string, fresh: string): void {
  const plan = { items: readItems(w.doc) };
  const item = moveIn(plan, id);
  if (!item) return;
  const members = tieOf(plan, item);
  const at = members.indexOf(item);
  const [above, below] = [members.slice(0, at), members.slice(at)];
  act(w, () => {
    if (above.length === 1) setItemField(w, above[0]?.id ?? "", "keep", undefined);
    // While there are two or more above, they keep the old tie's id and those below need a new one.
    const tie = below.length === 1 ? undefined : above.length > 1 ? fresh : item.keep;
    for (const member of below) setItemField(w, member.id, "keep", tie);
  });
}

/** Removes an item from its tie; the others stay tied while there are at least two of them. */
export function leaveTie(w: Writer, id: string): void {
  const plan = { items: readItems(w.doc) };
  const item = moveIn(plan, id);
  if (!item) return;
  const others = tieOf(plan, item).filter((member) => member !== item);
  act(w, () => {
    setItemField(w, id, "keep", undefined);
    if (others.length === 1) setItemField(w, others[0]?.id ?? "", "keep", undefined);
  });
}

/** Sets (`on`) or clears that an item comes after another one of its class. */
export function setComesAfter(w: Writer, id: string, otherId: string, on: boolean): void {
  if (id === otherId) return;
  withItem(w, id, (map) => {
    spread(map);
    const named = namedIn(map);
    const key = AFTER_KEY + otherId;
    if (!on) setOrDelete(map, key, undefined);
    else if (map.get(key) === undefined) map.set(key, 1 + Math.max(-1, ...named.map((k) => rankOf(map, k))));
    setOrDelete(map, "after", namedIn(map).length > 0 ? true : undefined);
  });
}

/** Turns a list from before there were flat keys into flat keys. */
function spread(map: ItemMap): void {
  const list = stored(moveItemSchema.shape.after, map.get("after"));
  for (const [rank, other] of (list ?? []).entries()) {
    if (map.get(AFTER_KEY + other) === undefined) map.set(AFTER_KEY + other, rank);
  }
}

/** A key may hold undefined: somebody's undo restored its absence. */
const namedIn = (map: ItemMap): string[] =>
  [...map.keys()].filter((key) => key.startsWith(AFTER_KEY) && map.get(key) !== undefined);

function rankOf(map: ItemMap, key: string): number {
  const rank = map.get(key);
  return typeof rank === "number" && Number.isFinite(rank) ? rank : -1;
}

const nonEmpty = (list: readonly unknown[]): boolean => list.length > 0;

function moveIn(plan: { items: ReturnType<typeof readItems> }, id: string) {
  const item = plan.items.find((i) => i.id === id);
  return item?.kind === "move" ? item : undefined;
}
