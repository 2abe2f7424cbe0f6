/**
 * What an update would cost to apply, estimated before it is. yjs applies an update in one go, and a few kilobytes crafted
 * for the purpose can block everybody for seconds. Counted are the steps that yjs takes besides reading the update once.
 *
 * yjs 13.6: a new item finds its place by walking from its left neighbour to its right one, over everything that others put
 * between; for an honest page they are side by side, apart from what was written at the same moment. Splitting a struct
 * moves all later structs of its client. Deleting and reading a shared type recurse into it, one stack frame per level.
 */
import * as Y from "yjs";
import type { DecodedUpdate } from "#server/doc-log/updates.ts";
import { cuts, isIn, originOf, Shadow, type StructPiece } from "./shadow.ts";
import { type Struct, StructView } from "./struct-view.ts";

/** Our own choices: less than 50 ms on a small machine. Two weeks offline on both sides take about 50,000 steps. */
const WEIGHT = { steps: 120_000, depth: 24, valueDepth: 32 } as const;
/** What a new struct costs besides its walk: it is read, checked and inserted. */
const STRUCT_STEPS = 4;
/** What a new client id costs: its owner is stored in a row. */
const CLIENT_STEPS = 16;
/** Structs moved by a split that cost as much as one step. */
const MOVED_A_STEP = 200;

/** True when the update is more work than a page may cause at once. Its deletions must not overlap. */
export function isTooHeavy(doc: Y.Doc, update: DecodedUpdate): boolean {
  return new Weigher(doc, update).isTooHeavy();
}

class Weigher {
  private steps = 0;
  private readonly update: DecodedUpdate;
  private readonly view: StructView;
  private readonly shadow: Shadow;
  private readonly done = new Set<Struct>();

  constructor(doc: Y.Doc, update: DecodedUpdate) {
    this.update = update;
    this.view = new StructView(doc, update);
    this.shadow = new Shadow(this.view);
  }

  isTooHeavy(): boolean {
    this.steps += this.view.freshStructs * STRUCT_STEPS + this.view.freshClients * CLIENT_STEPS;
    this.weighDeletions();
    if (this.spent > WEIGHT.steps) return true;
    for (const struct of this.view.brings()) {
      if (this.spent > WEIGHT.steps) return true;
      if (struct instanceof Y.Item && (isTooDeep(struct, this.view) || this.place(struct))) return true;
    }
    return this.spent > WEIGHT.steps;
  }

  private get spent(): number {
    return this.steps + this.shadow.climbed;
  }

  private weighDeletions(): void {
    for (const [client, ranges] of this.update.ds.clients)
      this.steps += ranges.length * (1 + (this.view.countOf(client) + ranges.length) / MOVED_A_STEP);
  }

  /** Inserts an item, after those of the update that it depends on, as yjs does. True once the limit is exceeded. */
  private place(item: Y.Item): boolean {
    const stack = [item];
    for (let top = stack.at(-1); top; top = stack.at(-1)) {
      const wanted = [top.origin, top.rightOrigin, top.parent instanceof Y.ID ? top.parent : null]
        .map((id) => id && this.view.brought(id))
        .find((struct) => struct instanceof Y.Item && !this.done.has(struct) && !stack.includes(struct));
      if (wanted instanceof Y.Item && stack.length < MAX_STANDING_ON) stack.push(wanted);
      else {
        stack.pop();
        if (!this.done.has(top)) this.put(top);
        this.done.add(top);
      }
      if (this.spent > WEIGHT.steps) return true;
    }
    return false;
  }

  private put(item: Y.Item): void {
    this.steps++;
    if (item.origin && cuts(this.view, item.origin)) this.steps += this.view.countOf(item.origin.client) / MOVED_A_STEP;
    const place = this.shadow.behind(item);
    if (place !== undefined) this.shadow.put(item, this.walk(item, place));
  }

  /** Finds an item's place among what others put between its neighbours, like `Item.integrate` of yjs. */
  private walk(item: Y.Item, place: StructPiece | string): StructPiece | string {
    const { rightOrigin } = item;
    let left = place;
    const before = new Set<StructPiece>();
    const conflicting = new Set<StructPiece>();
    for (let at = this.shadow.rightOf(place); at; at = this.shadow.rightOf(at)) {
      if ((rightOrigin && isIn(at, rightOrigin)) || this.steps++ > WEIGHT.steps) break;
      before.add(at);
      conflicting.add(at);
      const origin = originOf(at);
      if (Y.compareIDs(item.origin, origin)) {
        const goesOn = at.client > item.id.client;
        if (goesOn && at.of instanceof Y.Item && Y.compareIDs(rightOrigin, at.of.rightOrigin)) break;
        if (goesOn) continue;
      } else {
        const beside = origin && this.shadow.pieceAt(origin);
        if (!beside || !before.has(beside)) break;
        if (conflicting.has(beside)) continue;
      }
      left = at;
      conflicting.clear();
    }
    return left;
  }
}

/** A longer chain of items that depend on later ones, which no page of ours writes, is processed as it comes. */
const MAX_STANDING_ON = 64;

function isTooDeep(item: Y.Item, view: StructView): boolean {
  const { content } = item;
  if (content instanceof Y.ContentDoc) return true;
  if (content instanceof Y.ContentType) return isDeepType(item, view);
  if (content instanceof Y.ContentAny || content instanceof Y.ContentJSON)
    return isDeeper(content.arr, WEIGHT.valueDepth);
  if (content instanceof Y.ContentEmbed) return isDeeper(content.embed, WEIGHT.valueDepth);
  return content instanceof Y.ContentFormat && isDeeper(content.value, WEIGHT.valueDepth);
}

/** Whether an item is nested in more shared types than any document of ours has. */
function isDeepType(item: Y.Item, view: StructView): boolean {
  let at: Y.Item | undefined = item;
  for (let depth = 0; at; depth++) {
    if (depth > WEIGHT.depth) return true;
    const named: Y.Item | undefined = view.named(at);
    const parent: Y.Item["parent"] = named?.parent ?? null;
    const holder: Struct | null | undefined = parent instanceof Y.ID ? view.get(parent) : null;
    if (parent instanceof Y.AbstractType) at = parent._item ?? undefined;
    else at = holder instanceof Y.Item ? holder : undefined;
  }
  return false;
}

/** Whether a value is nested deeper than `levels`. Does not look any further. */
function isDeeper(value: unknown, levels: number): boolean {
  if (typeof value !== "object" || value === null) return false;
  if (levels === 0) return true;
  return Object.values(value).some((inner) => isDeeper(inner, levels - 1));
}
