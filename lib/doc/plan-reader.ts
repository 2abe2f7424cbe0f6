/**
 * Reads one shared document repeatedly, with the same result as `readPlan`, at the cost of what was written since: only
 * items that an update touched are read, and whatever is unchanged stays the very same value. Reading never writes, and
 * its listeners never throw, since yjs would then stop reporting updates for good.
 */
import * as Y from "yjs";
import { Kept, KeptEach } from "#lib/memo/kept.ts";
import type { Equipment, Move, Plan, PlanItem, ScriptLine, Standards } from "#lib/plan/schema.ts";
import {
  type Carried,
  type MoveSource,
  movesFor,
  readCarried,
  type StudioContext,
  withSpringsUsed,
} from "./from-studio.ts";
import { planParts } from "./layout.ts";
import { byOrder } from "./order.ts";
import { type DeletedItem, planOf, readDeleted, readHead, withLivingWaits } from "./read.ts";
import { readItem } from "./read-item.ts";

interface Entry {
  readonly id: string;
  readonly order: string;
  readonly taken: boolean;
  /** Undefined for a kind that this version does not know. */
  readonly item: PlanItem | undefined;
}

export interface ReadPlan {
  readonly plan: Plan;
  /**
   * Items, not taken out, of a kind that this version does not know: they stay in the document and are not in the plan.
   */
  readonly unknownItems: number;
}

export class PlanReader {
  private readonly doc: Y.Doc;
  private readonly entries = new Map<string, Entry>();
  private living: readonly Entry[] = [];
  private deleted: readonly DeletedItem[] = [];
  /** What was written since the last reading. */
  private readonly touched = new Set<string>();
  private headTouched = true;
  private carriedTouched = true;
  private head: ReturnType<typeof readHead> | undefined;
  private carried: Carried = { equipment: undefined, moves: {}, standards: undefined };
  private readonly shown = new KeptEach<PlanItem>();
  private readonly items = new Kept<PlanItem[]>();
  private readonly equipment = new Kept<Equipment>();
  private readonly fitted = new KeptEach<Move>();
  private readonly lent = new Kept<Record<string, Move>>();
  private readonly moves = new Kept<Record<string, Move>>();
  private readonly plan = new Kept<Plan>();
  private readonly off: () => void;

  constructor(doc: Y.Doc) {
    this.doc = doc;
    const { items, head, theme, carried } = planParts(doc);
    for (const id of items.keys()) this.touched.add(id);
    const noteItems = (events: readonly TouchedType[]) => this.noteItems(events);
    const noteHead = () => {
      this.headTouched = true;
    };
    const noteCarried = () => {
      this.carriedTouched = true;
    };
    items.observeDeep(noteItems);
    head.observe(noteHead);
    theme.observe(noteHead);
    carried.observe(noteCarried);
    this.off = () => {
      items.unobserveDeep(noteItems);
      head.unobserve(noteHead);
      theme.unobserve(noteHead);
      carried.unobserve(noteCarried);
    };
  }

  /** The document as it is now, with what its studio has now. */
  read(studio: StudioContext): ReadPlan {
    this.readTouched();
    const { title, notes } = planParts(this.doc);
    const items = this.livingItems();
    const equipment = this.carried.equipment ?? this.withUsed(studio, items);
    const moves = this.movesOf({ carried: this.carried.moves, library: studio.moves, items, equipment });
    const standards: Standards | undefined = studio.standards ?? this.carried.standards;
    const texts = { title: title.toString(), notes: notes.toString() };
    const { head } = this;
    const plan = this.plan.get([texts.title, texts.notes, head, equipment, standards, moves, items], () =>
      planOf({ ...texts, head: head ?? headOf(this.doc), equipment, standards, moves, items }),
    );
    return { plan, unknownItems: this.living.length - items.length };
  }

  /** Items taken out, newest first, as of the last reading. */
  get takenOut(): readonly DeletedItem[] {
    return this.deleted;
  }

  /** Stops listening. */
  end(): void {
    this.off();
  }

  private noteItems(events: readonly TouchedType[]): void {
    const { items } = planParts(this.doc);
    for (const event of events) {
      if (event.target === items && event instanceof Y.YMapEvent)
        for (const key of event.keysChanged) this.touched.add(String(key));
      else this.touched.add(idUnder(items, event.target) ?? "");
    }
  }

  private readTouched(): void {
    const { carried, items } = planParts(this.doc);
    if (this.headTouched) this.head = equalOr(this.head, headOf(this.doc));
    if (this.carriedTouched) this.carried = readCarried(carried);
    this.headTouched = false;
    this.carriedTouched = false;
    if (this.touched.size === 0) return;
    let [anyTaken, anyPlaced] = [false, false];
    for (const id of this.touched) {
      const was = this.entries.get(id);
      const now = entryOf(id, items.get(id), was);
      if (now) this.entries.set(id, now);
      else this.entries.delete(id);
      anyTaken ||= was?.taken === true || now?.taken === true;
      anyPlaced ||= was?.order !== now?.order || was?.taken !== now?.taken;
    }
    this.touched.clear();
    this.living = anyPlaced
      ? [...this.entries.values()].filter(({ taken }) => !taken).sort(byOrder)
      : this.living.map((entry) => this.entries.get(entry.id) ?? entry);
    if (anyTaken) this.deleted = readDeleted(this.doc);
  }

  private livingItems(): PlanItem[] {
    const items = this.living.flatMap(({ item }) => item ?? []);
    const living = new Set(items.map(({ id }) => id));
    this.shown.round();
    const shown = items.map((item) => {
      const held = withLivingWaits(item, living);
      return held === item ? item : this.shown.get(item.id, [item, JSON.stringify(held)], () => held);
    });
    return this.items.get(shown, () => shown);
  }

  private withUsed(studio: StudioContext, items: readonly PlanItem[]): Equipment {
    const used = withSpringsUsed(studio, items);
    const added = used.springs.slice(studio.equipment.springs.length).map(({ id }) => id);
    return this.equipment.get([studio.equipment, studio.otherSprings, ...added], () => used);
  }

  private movesOf(source: MoveSource): Record<string, Move> {
    const { carried, library, items, equipment } = source;
    const asked = items.map((item) => (item.kind === "move" ? item.move : null));
    return this.lent.get([carried, library, equipment, ...asked], () => {
      this.fitted.round();
      const keep = (id: string, move: Move, fit: () => Move) => this.fitted.get(id, [move, equipment], fit);
      const moves = movesFor(source, keep);
      return this.moves.get(Object.entries(moves).flat(), () => moves);
    });
  }
}

function headOf(doc: Y.Doc): ReturnType<typeof readHead> {
  const { head, theme } = planParts(doc);
  return readHead(head, theme.toString());
}

/** Where something was written. yjs types every shared type's events differently, which does not matter here. */
interface TouchedType {
  readonly target: unknown;
}

/** Id of the entry, in a map of maps, that a nested type belongs to. */
function idUnder(items: unknown, target: unknown): string | null {
  let at = target;
  while (at instanceof Y.AbstractType && at.parent !== items) at = at.parent;
  return at instanceof Y.AbstractType ? (at._item?.parentSub ?? null) : null;
}

/** Undefined when there is nothing readable there any more. */
function entryOf(id: string, map: unknown, was: Entry | undefined): Entry | undefined {
  if (!(map instanceof Y.Map)) return undefined;
  const order = map.get("order");
  return {
    id,
    order: typeof order === "string" ? order : "",
    taken: map.get("deleted") !== undefined,
    item: withPartsOf(was?.item, equalOr(was?.item, readItem(id, map))),
  };
}

/** Keeps what is equal within an item that is not. */
function withPartsOf(was: PlanItem | undefined, now: PlanItem | undefined): PlanItem | undefined {
  if (now === was || was?.kind !== "move" || now?.kind !== "move") return now;
  const springs = equalOr(was.springs, now.springs);
  return was.script && now.script ? { ...now, springs, script: linesOf(was.script, now.script) } : { ...now, springs };
}

/** Keeps the very same line objects before the first and after the last line that differs. */
function linesOf(before: readonly ScriptLine[], after: readonly ScriptLine[]): ScriptLine[] {
  const more = before.length - after.length;
  const isSame = (n: number, m: number) =>
    before[n] !== undefined && JSON.stringify(before[n]) === JSON.stringify(after[m]);
  let first = 0;
  while (isSame(first, first)) first++;
  let last = after.length;
  while (last > first && last + more > first && isSame(last + more - 1, last - 1)) last--;
  return after.map((line, n) => (n < first ? before[n] : n >= last ? before[n + more] : line) ?? line);
}

/** The old value where the new one is equal to it. */
const equalOr = <T>(was: T | undefined, now: T): T =>
  was !== undefined && JSON.stringify(was) === JSON.stringify(now) ? was : now;
