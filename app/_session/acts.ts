/**
 * What a person can do to a plan outside its script. Each act is one step of undo, says in one sentence what it did, and
 * does nothing for somebody who may only read.
 */
import { readItemById } from "#lib/doc/read.ts";
import {
  deleteItem,
  duplicateItem,
  type HeadField,
  type ItemField,
  insertItems,
  moveItem,
  restoreItem,
  setExpected,
  setHead,
  setItemField,
  setSpring,
  setThemeShare,
} from "#lib/doc/write.ts";
import { usualPlaceWords } from "#lib/load/load-words.ts";
import { secondsWords, springWords } from "#lib/plan/format.ts";
import { headSeconds, moveOf } from "#lib/plan/lookup.ts";
import type { ExpectedCaution, Facing, Group, ItemSide, Move, MoveItem, PlanItem } from "#lib/plan/schema.ts";
import { steppedSeconds } from "#lib/rail/drag.ts";
import { newId } from "../_parts/new-id.ts";
import { nameOf, TAKEN_OUT_LIST } from "./item-words.ts";
import type { PlanSession } from "./session.ts";
import { startingSeconds } from "./starting-seconds.ts";
import { startingSprings } from "./starting-springs.ts";

/** Common practice, no source. */
const NEW_PAUSE_SECONDS = 30;

export function addMoveItem(s: PlanSession, after: string | null, moveId: string, side?: ItemSide): void {
  const move = s.studio.moves[moveId] ?? s.getSnapshot().plan.moves[moveId];
  if (!move) return;
  const item = newMoveItem(s, moveId, move, side ?? defaultSide(move));
  insert(s, after, [item], `${move.name} added.`);
}

/** The left and the right item of one move, as one act. */
export function addMovePair(s: PlanSession, after: string | null, moveId: string): void {
  const move = s.studio.moves[moveId] ?? s.getSnapshot().plan.moves[moveId];
  if (!move) return;
  const left = newMoveItem(s, moveId, move, "left");
  const right = { ...left, id: newId(), side: "right" as const, ...turned(left.facing ?? move.facing) };
  insert(s, after, [left, right], `${move.name} added, left and right.`);
}

/** Facing left on one side is facing right on the other. Any other facing is the same on both. */
function turned(facing: Facing): { facing?: Facing } {
  if (facing === "left") return { facing: "right" };
  return facing === "right" ? { facing: "left" } : {};
}

export function addHeading(s: PlanSession, after: string | null): void {
  insert(s, after, [{ id: newId(), kind: "heading", title: "" }], "Heading added.");
}

export function addPause(s: PlanSession, after: string | null): void {
  insert(s, after, [{ id: newId(), kind: "pause", seconds: NEW_PAUSE_SECONDS }], "Pause added.");
}

/** A copy for the other side right after the item, its script included. */
export function addOtherSide(s: PlanSession, item: MoveItem): void {
  const side = item.side === "left" ? "right" : "left";
  const id = newId();
  const facing = item.facing ?? moveOf(s.getSnapshot().plan, item)?.facing;
  const changes = { side, ...(facing ? turned(facing) : {}) } as const;
  if (!s.act((w) => duplicateItem(w, item.id, id, changes))) return;
  s.select(id);
  s.say(`${side === "left" ? "Left" : "Right"} side added after it.`);
}

export function duplicate(s: PlanSession, item: PlanItem): void {
  const id = newId();
  if (!s.act((w) => duplicateItem(w, item.id, id))) return;
  s.select(id);
  s.say(`${nameOf(s.getSnapshot().plan, item)} duplicated.`);
}

/** Takes an item out of the plan and selects its neighbour. The item stays in the list from which it can be put back. */
export function takeOut(s: PlanSession, item: PlanItem): void {
  const { plan } = s.getSnapshot();
  const at = plan.items.findIndex((i) => i.id === item.id);
  const next = plan.items[at + 1] ?? plan.items[at - 1];
  if (!s.act((w) => deleteItem(w, item.id, Date.now()))) return;
  s.select(next?.id ?? null);
  s.say(`${nameOf(plan, item)} taken out. You can put it back from the list “${TAKEN_OUT_LIST}” under “The class”.`);
}

export function putBack(s: PlanSession, id: string): void {
  if (!s.act((w) => restoreItem(w, id))) return;
  s.select(id);
  s.say("Put back where it was.");
}

/** Moves an item to stand after `afterId` (null: at the top). */
export function moveAfter(s: PlanSession, id: string, afterId: string | null): void {
  const before = s.getSnapshot().plan.items.map((i) => i.id);
  const at = before.indexOf(id);
  if (at < 0 || afterId === id || (before[at - 1] ?? null) === afterId) return;
  if (!s.act((w) => moveItem(w, id, afterId))) return;
  const { plan } = s.getSnapshot();
  const place = plan.items.findIndex((i) => i.id === id);
  const item = plan.items[place];
  if (item) s.say(`${nameOf(plan, item)} is now ${place + 1} of ${plan.items.length}.`);
}

/** One place up (-1) or down (+1) the rail. */
export function moveBy(s: PlanSession, id: string, by: -1 | 1): void {
  const ids = s.getSnapshot().plan.items.map((i) => i.id);
  const at = ids.indexOf(id);
  if (by === -1 && at > 0) moveAfter(s, id, ids[at - 2] ?? null);
  if (by === 1 && at >= 0 && at < ids.length - 1) moveAfter(s, id, ids[at + 1] ?? null);
}

/** Sets the seconds of a move or pause; `seconds` is held between 1 (a pause: 0) and four hours. */
export function setItemSeconds(s: PlanSession, item: PlanItem, seconds: number): void {
  if (item.kind === "heading" || !Number.isFinite(seconds)) return;
  const held = Math.min(14400, Math.max(item.kind === "pause" ? 0 : 1, Math.round(seconds * 10) / 10));
  if (held === item.seconds || !s.act((w) => setItemField(w, item.id, "seconds", held))) return;
  s.say(`${nameOf(s.getSnapshot().plan, item)}: ${secondsWords(held)}.`);
}

/** One step of the plan's grid longer (1) or shorter (-1). */
export function stepItemSeconds(s: PlanSession, item: PlanItem, by: 1 | -1): void {
  if (item.kind === "heading") return;
  const grid = headSeconds(s.getSnapshot().plan, "gridSeconds");
  setItemSeconds(s, item, steppedSeconds(item.seconds, by, grid));
}

export function setField<F extends ItemField>(
  s: PlanSession,
  id: string,
  field: F,
  value: MoveItem[F] | undefined,
): void {
  s.act((w) => setItemField(w, id, field, value));
}

export function setSpringCount(s: PlanSession, id: string, spring: string, count: number): void {
  s.act((w) => setSpring(w, id, spring, count));
}

/** All springs of an item at once, and where it starts if that is to change too: one act. */
export function setSprings(s: PlanSession, item: MoveItem, springs: MoveItem["springs"], offsetMm?: number): void {
  const ids = new Set([...Object.keys(item.springs), ...Object.keys(springs)]);
  const acted = s.act((w) => {
    for (const id of ids) setSpring(w, item.id, id, springs[id] ?? 0);
    if (offsetMm !== undefined) setItemField(w, item.id, "offsetMm", offsetMm);
  });
  if (!acted) return;
  const on = springWords(s.getSnapshot().plan.equipment, springs);
  s.say(offsetMm === undefined ? `Now ${on} on.` : `Now ${on} on, started ${usualPlaceWords(offsetMm, s.formats)}.`);
}

/** Where the person starts, mm from the move's usual place. */
export function setOffset(s: PlanSession, item: MoveItem, offsetMm: number): void {
  if (offsetMm === (item.offsetMm ?? 0)) return;
  if (s.act((w) => setItemField(w, item.id, "offsetMm", offsetMm)))
    s.say(`Started ${usualPlaceWords(offsetMm, s.formats)}.`);
}

/** Puts another move in the place of an item’s. A side that the new move does not have becomes one that it has. */
export function changeItemMove(s: PlanSession, id: string, moveId: string): void {
  const move = s.studio.moves[moveId] ?? s.getSnapshot().plan.moves[moveId];
  const item = readItemById(s.doc, id);
  if (!move || item?.kind !== "move") return;
  s.act((w) => {
    setItemField(w, id, "move", moveId);
    if (!sidesOf(move).includes(item.side)) setItemField(w, id, "side", defaultSide(move));
  });
  s.say(`Now ${move.name}.`);
}

export function setHeadField(s: PlanSession, field: HeadField, value: string | number | undefined): void {
  s.act((w) => setHead(w, field, value));
}

export function setShare(s: PlanSession, group: Group, share: number | undefined): void {
  s.act((w) => setThemeShare(w, group, share));
}

export function setExpectedOn(s: PlanSession, caution: ExpectedCaution, on: boolean): void {
  const rank = (s.getSnapshot().plan.expected ?? []).length;
  s.act((w) => setExpected(w, caution, on, rank));
}

/** The sides an item of this move may have. */
export function sidesOf(move: Move | undefined): readonly ItemSide[] {
  if (move?.sides === "each") return ["left", "right", "alternating"];
  if (move?.sides === "alternating") return ["alternating", "left", "right"];
  if (move?.sides === "both") return ["both"];
  return ["both", "left", "right", "alternating"];
}

const defaultSide = (move: Move): ItemSide => sidesOf(move)[0] ?? "both";

/** A new item starts with a first choice of springs and with its usual time on the grid. */
function newMoveItem(s: PlanSession, moveId: string, move: Move, side: ItemSide): MoveItem {
  const seconds = startingSeconds(move);
  const springs = startingSprings(move, s.getSnapshot().plan.equipment);
  return { id: newId(), kind: "move", move: moveId, side, seconds, springs };
}

function insert(s: PlanSession, after: string | null, items: readonly PlanItem[], said: string): void {
  if (!s.act((w) => insertItems(w, after, items))) return;
  // The last of them, so that what is added next comes after a pair and not inside it.
  s.select(items.at(-1)?.id ?? null);
  s.say(said);
}
