/**
 * Reads a shared document into plain plan data. Reading never writes: no update is emitted, unknown keys stay. Values
 * of a wrong type (in a damaged or newer document) are skipped and never make it throw.
 */
import * as Y from "yjs";
import {
  EXPECTED_CAUTIONS,
  type ExpectedCaution,
  GROUPS,
  type Group,
  LEVELS,
  PLAN_FORMAT,
  type Plan,
  type PlanItem,
  planSchema,
  type Standards,
} from "#lib/plan/schema.ts";
import { movesFor, readCarried, type StudioContext, withSpringsUsed } from "./from-studio.ts";
import { EXPECTED_KEY, MOVE_KEY, planParts, SHARE_KEY, UNDONE_CREATION } from "./layout.ts";
import { byOrder } from "./order.ts";
import { othersWroteIn } from "./other-writers.ts";
import { readItem } from "./read-item.ts";
import { compact, num, oneOf, str } from "./values.ts";

export interface DeletedItem {
  readonly id: string;
  readonly item: PlanItem;
  readonly deletedAt: number;
}

/**
 * The plan as data: a complete `springline.plan/1` object with the moves it uses embedded. Machines and moves that came
 * with an imported file win over the studio's. Its standards never do, since a file that could switch a rule off would
 * hide findings from everyone who reads the plan; they count only where the document has no studio. An item whose move
 * is unknown is kept: rules report it.
 */
export function readPlan(doc: Y.Doc, studio: StudioContext): Plan {
  const p = planParts(doc);
  const items = readItems(doc);
  const carried = readCarried(p.carried);
  const equipment = carried.equipment ?? withSpringsUsed(studio, items);
  return planOf({
    title: p.title.toString(),
    notes: p.notes.toString(),
    head: readHead(p.head, p.theme.toString()),
    equipment,
    standards: studio.standards ?? carried.standards,
    moves: movesFor({ carried: carried.moves, library: studio.moves, items, equipment }),
    items,
  });
}

/** What a plan is assembled from. */
interface PlanSource extends Pick<Plan, "title" | "equipment" | "moves" | "items"> {
  readonly notes: string;
  readonly head: ReturnType<typeof readHead>;
  readonly standards: Standards | undefined;
}

export const planOf = ({ title, notes, head, equipment, standards, moves, items }: PlanSource): Plan => ({
  format: PLAN_FORMAT,
  title,
  ...head,
  equipment,
  ...(standards === undefined || Object.keys(standards).length === 0 ? {} : { standards }),
  moves,
  items,
  ...(notes === "" ? {} : { notes }),
});

/** What lists show about a plan: cheap enough to read after every burst of typing. */
export function readListed(doc: Y.Doc): Pick<Plan, "title" | "lengthSeconds"> {
  const { title, head } = planParts(doc);
  return { title: title.toString(), lengthSeconds: lengthOf(head) };
}

/** 25 minutes, a slot that many studios have, for a damaged document without a length. */
const lengthOf = (head: Y.Map<unknown>): number => num(head.get("lengthSeconds")) ?? 1500;

/** The standards of the file that the plan came from: kept for exporting it again, never used in another studio. */
export const carriedStandards = (doc: Y.Doc): Standards | undefined => readCarried(planParts(doc).carried).standards;

/** Items that are not taken out, in order. */
export function readItems(doc: Y.Doc): PlanItem[] {
  const items = orderedIds(doc).flatMap((id) => {
    const map = planParts(doc).items.get(id);
    const item = map && readItem(id, map);
    return item ? [item] : [];
  });
  const living = new Set(items.map(({ id }) => id));
  return items.map((item) => withLivingWaits(item, living));
}

/**
 * The item with only those `after` items that are still in the plan: an item taken out holds nobody back until it is
 * put back.
 */
export function withLivingWaits(item: PlanItem, living: ReadonlySet<string>): PlanItem {
  if (item.kind !== "move" || !item.after || item.after.every((id) => living.has(id))) return item;
  const { after, ...rest } = item;
  const left = after.filter((id) => living.has(id));
  return left.length > 0 ? { ...rest, after: left } : rest;
}

export interface MoveUse {
  /** Items with this move that are not taken out. */
  readonly items: number;
  /** Whether it came with an imported file; the plan then keeps it, whatever happens to the library's. */
  readonly carried: boolean;
}

/**
 * The moves of all items not taken out, by id, without reading the rest of the items: cheap enough to ask of every
 * plan.
 */
export function movesUsed(doc: Y.Doc): Map<string, MoveUse> {
  const { items, carried } = planParts(doc);
  const used = new Map<string, MoveUse>();
  for (const map of items.values()) {
    if (!(map instanceof Y.Map) || map.get("kind") !== "move" || map.get("deleted") !== undefined) continue;
    const move = str(map.get("move"));
    if (move === undefined) continue;
    used.set(move, { items: (used.get(move)?.items ?? 0) + 1, carried: carried.has(MOVE_KEY + move) });
  }
  return used;
}

/** One item, or undefined when it is gone or of a kind this version does not know. */
export function readItemById(doc: Y.Doc, id: string): PlanItem | undefined {
  const map = planParts(doc).items.get(id);
  return map instanceof Y.Map && map.get("deleted") === undefined ? readItem(id, map) : undefined;
}

/**
 * Items taken out, newest first: each can be put back. One whose creator undid its creation is listed only if somebody
 * else has written in it: until then it is that person's undo and nobody's loss.
 */
export function readDeleted(doc: Y.Doc): DeletedItem[] {
  const gone: DeletedItem[] = [];
  for (const [id, map] of planParts(doc).items) {
    if (!(map instanceof Y.Map)) continue;
    const deletedAt = map.get("deleted");
    if (deletedAt === undefined || (deletedAt === UNDONE_CREATION && !othersWroteIn(map))) continue;
    const item = readItem(id, map);
    if (item) gone.push({ id, item, deletedAt: typeof deletedAt === "number" ? deletedAt : 0 });
  }
  return gone.sort((a, b) => b.deletedAt - a.deletedAt || (a.id < b.id ? -1 : 1));
}

/** Ids and order keys of items that are not taken out, sorted. */
export function orderedItems(doc: Y.Doc): { id: string; order: string }[] {
  const list: { id: string; order: string }[] = [];
  for (const [id, map] of planParts(doc).items) {
    if (!(map instanceof Y.Map) || map.get("deleted") !== undefined) continue;
    const order = map.get("order");
    list.push({ id, order: typeof order === "string" ? order : "" });
  }
  return list.sort(byOrder);
}

export const orderedIds = (doc: Y.Doc): string[] => orderedItems(doc).map((o) => o.id);

/** The script fragment of an item, for an editor to bind to. */
export function scriptOf(doc: Y.Doc, id: string): Y.XmlFragment | undefined {
  const script = planParts(doc).items.get(id)?.get("script");
  return script instanceof Y.XmlFragment ? script : undefined;
}

/** The shared text of a heading's title or a pause's words. */
export function labelOf(doc: Y.Doc, id: string): Y.Text | undefined {
  const label = planParts(doc).items.get(id)?.get("label");
  return label instanceof Y.Text ? label : undefined;
}

export function readHead(
  head: Y.Map<unknown>,
  theme: string,
): Omit<Plan, "format" | "title" | "equipment" | "standards" | "moves" | "items" | "notes"> {
  const shares = readShares(head);
  const expected = readExpected(head);
  const speech = compact({
    syllablesPerSecond: num(head.get("speech.syllablesPerSecond")),
    pauseSeconds: num(head.get("speech.pauseSeconds")),
  });
  const hasSpeech = Object.keys(speech).length > 0 || head.get("speech") === true;
  return compact({
    lengthSeconds: lengthOf(head),
    theme: theme === "" ? undefined : compact({ name: theme, shares }),
    level: oneOf(LEVELS, head.get("level")),
    expected,
    openingSeconds: num(head.get("openingSeconds")),
    closingSeconds: num(head.get("closingSeconds")),
    headsUpSeconds: num(head.get("headsUpSeconds")),
    countInSeconds: num(head.get("countInSeconds")),
    gridSeconds: num(head.get("gridSeconds")),
    people: peopleOf(head.get("people")),
    speech: hasSpeech ? speech : undefined,
  }) as ReturnType<typeof readHead>;
}

/** Anything else counts as not said, so that nobody's number keeps the plan from being written as a file. */
const peopleOf = (value: unknown): number | undefined => {
  const read = planSchema.shape.people.safeParse(value);
  return read.success ? read.data : undefined;
};

function readShares(head: Y.Map<unknown>): Partial<Record<Group, number>> | undefined {
  const shares: Partial<Record<Group, number>> = {};
  for (const group of GROUPS) {
    const share = num(head.get(SHARE_KEY + group));
    if (share !== undefined) shares[group] = share;
  }
  return Object.keys(shares).length > 0 || head.get("shares") === true ? shares : undefined;
}

/** `expected.X` holds a rank, so that the list keeps its order and two people ticking at once both count. */
function readExpected(head: Y.Map<unknown>): ExpectedCaution[] | undefined {
  const ranked = EXPECTED_CAUTIONS.flatMap((caution) => {
    const rank = num(head.get(EXPECTED_KEY + caution));
    return rank === undefined ? [] : [{ caution, rank }];
  });
  if (ranked.length === 0) return head.get("expected") === true ? [] : undefined;
  return ranked.sort((a, b) => a.rank - b.rank || (a.caution < b.caution ? -1 : 1)).map((r) => r.caution);
}
