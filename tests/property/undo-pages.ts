/**
 * Pages over a network, each with its own undo, and a witness that knows from the acts alone who set which value.
 * The witness reads documents by their plain values and knows nothing of how undo works.
 */
import * as Y from "yjs";
import { planUndo } from "#app/_session/plan-undo.ts";
import { ActUndo } from "#lib/client/act-undo.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { planParts, UNDONE_CREATION } from "#lib/doc/layout.ts";
import { orderedIds, readDeleted } from "#lib/doc/read.ts";
import { reorderItems } from "#lib/doc/reorder.ts";
import {
  deleteItem,
  duplicateItem,
  insertItem,
  moveItem,
  restoreItem,
  setHead,
  setItemField,
  setSpring,
  setText,
  setThemeShare,
  type Writer,
} from "#lib/doc/write.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import type { Now } from "#lib/programme/keep-revisions.ts";
import { monthParts, monthUndoScopes } from "#lib/programme/layout.ts";
import { readDeletedSlots, readMonth } from "#lib/programme/read.ts";
import { addSlot, changeSlot, putBackSlot, takeOutSlot } from "#lib/programme/write.ts";
import { changeLine, changeLineFrom } from "#lib/programme/write-pattern.ts";
import { SMALL_PLAN } from "#tests/support/sync-server.ts";

export interface Act {
  readonly kind: number;
  readonly on: number;
  readonly to: number;
}
/** `fresh`: a number that no act has used before, so that a value shows who set it. */
type Does = (w: Writer, act: Act, fresh: number) => void;
type Maps = Y.Map<Y.Map<unknown>>;

export interface Kind {
  readonly start: Uint8Array;
  readonly acts: readonly Does[];
  readonly required: readonly string[];
  entries(doc: Y.Doc): Maps;
  head(doc: Y.Doc): Y.Map<unknown> | null;
  undo(writer: Writer): ActUndo;
}

const pick = <T>(list: readonly T[], n: number): T | undefined => list[n % Math.max(1, list.length)];
const on =
  (ids: (w: Writer) => readonly string[]) =>
  (does: (w: Writer, id: string, act: Act, fresh: number) => void): Does =>
  (w, act, fresh) => {
    const id = pick(ids(w), act.on);
    if (id !== undefined) does(w, id, act, fresh);
  };
const living = on((w) => orderedIds(w.doc));
const gone = on((w) => readDeleted(w.doc).map(({ id }) => id));
const place = (w: Writer, n: number) => (n % 5 === 0 ? null : (pick(orderedIds(w.doc), n) ?? null));
const move = (id: string, seconds: number) =>
  ({ id, kind: "move", move: "kneeling-row", side: "both", seconds, springs: {} }) as const;

export const PLAN: Kind = {
  start: Y.encodeStateAsUpdate(createPlanDoc(SMALL_PLAN, { carry: true })),
  required: ["kind", "order", "seconds", "side", "move"],
  entries: (doc) => planParts(doc).items,
  head: (doc) => planParts(doc).head,
  undo: (writer) => planUndo(writer, () => undefined),
  acts: [
    living((w, id, _act, fresh) => setItemField(w, id, "seconds", fresh)),
    living((w, id, _act, fresh) => setItemField(w, id, "seconds", fresh)),
    living((w, id, act) => moveItem(w, id, place(w, act.to))),
    living((w, id, act) => moveItem(w, id, place(w, act.to))),
    living((w, id, act, fresh) => setSpring(w, id, "firm", act.to % 3 === 0 ? 0 : fresh)),
    living((w, id, act) => setItemField(w, id, "side", act.to % 2 === 0 ? "left" : "right")),
    living((w, id, act, fresh) => setItemField(w, id, "offsetMm", act.to % 3 === 0 ? undefined : fresh)),
    living((w, id, act, fresh) => setItemField(w, id, "range", act.to % 3 === 0 ? undefined : [1, fresh])),
    living((w, id, act) => setItemField(w, id, "locked", act.to % 2 === 0 ? true : undefined)),
    living((w, id, _act, fresh) => deleteItem(w, id, fresh)),
    gone((w, id) => restoreItem(w, id)),
    (w, act, fresh) => insertItem(w, place(w, act.to), move(`n${fresh}`, fresh)),
    living((w, id, _act, fresh) => duplicateItem(w, id, `n${fresh}`)),
    (w, _act, fresh) => setHead(w, "lengthSeconds", fresh),
    (w, act, fresh) => setHead(w, "closingSeconds", act.to % 3 === 0 ? undefined : fresh),
    (w, act, fresh) => setThemeShare(w, "biceps", act.to % 3 === 0 ? undefined : fresh),
    (w, _act, fresh) => setText(w, planParts(w.doc).title, `Class ${fresh}`),
    (w, act) => {
      const ids = orderedIds(w.doc);
      const from = act.on % Math.max(1, ids.length);
      reorderItems(w, ids[from - 1] ?? null, ids.slice(from, from + 4).reverse());
    },
    (w, act, fresh) => {
      for (const id of orderedIds(w.doc).slice(0, 1 + (act.to % 3))) setItemField(w, id, "transitionSeconds", fresh);
    },
  ],
};

const slots = on((w) => readMonth(w.doc).slots.map(({ id }) => id));
const single = on((w) => readMonth(w.doc).slots.flatMap(({ id }) => (id.startsWith("mon-") ? [] : [id])));
const goneSlots = on((w) => readDeletedSlots(w.doc).map(({ slot }) => slot.id));
const day = (n: number) => `2026-11-${String(1 + (n % 30)).padStart(2, "0")}`;
const time = (n: number) => `${String(n % 24).padStart(2, "0")}:${String(n % 60).padStart(2, "0")}`;
const slot = (id: string, n: number) => ({ id, date: day(n), start: time(n), minutes: 45, coach: "u-0" });
/** A moment after each class was made, at which a single one that is taken out vanishes. */
const soon = (fresh: number): Now => ({ at: fresh, signedAt: null });

export const MONTH: Kind = {
  start: Y.encodeStateAsUpdate(
    createMonthDoc(
      "2026-11",
      {
        slots: [slot("a", 1), slot("b", 2), slot("c", 3)],
        pattern: [{ id: "mon", days: [1, 4], start: "07:00", minutes: 30, coach: "u-0" }],
      },
      1,
    ),
  ),
  required: ["date", "time", "minutes"],
  entries: (doc) => monthParts(doc).slots,
  head: (doc) => monthParts(doc).changed,
  undo: ({ doc, origin }) =>
    new ActUndo({ doc, origin, scopes: monthUndoScopes(doc), takenOut: { key: "deleted", value: UNDONE_CREATION } }),
  acts: [
    slots((w, id, act) => void changeSlot(w, id, { date: day(act.to) })),
    slots((w, id, act) => void changeSlot(w, id, { date: day(act.to), start: time(act.on) })),
    slots((w, id, act) => void changeSlot(w, id, { minutes: 5 + (act.to % 400) })),
    slots((w, id, act, fresh) => void changeSlot(w, id, { coach: act.to % 3 === 0 ? null : `u-${fresh}` })),
    slots((w, id, act, fresh) => void changeSlot(w, id, { room: act.to % 3 === 0 ? null : `r-${fresh}` })),
    slots((w, id, act, fresh) => void changeSlot(w, id, { plan: act.to % 3 === 0 ? null : `p-${fresh}` })),
    single((w, id, _act, fresh) => void takeOutSlot(w, id, soon(fresh))),
    goneSlots((w, id) => putBackSlot(w, id)),
    (w, _act, fresh) => void addSlot(w, slot(`n${fresh}`, fresh), fresh),
    (w, _act, fresh) => changeLine(w, "mon", { coach: `u-${fresh}` }),
    (w, act, fresh) => changeLineFrom(w, act.to % 2 ? "mon-20261112" : "mon-20261119", { room: `r-${fresh}` }),
  ],
};

/** Every plain value of a document by its place: "item/seconds" to JSON. Absent values are left out. */
export function plainValues(kind: Kind, doc: Y.Doc): Map<string, string> {
  const values = new Map<string, string>();
  const read = (map: Y.Map<unknown>, under: string) => {
    for (const [key, value] of map.entries())
      if (value !== undefined && !(value instanceof Y.AbstractType))
        values.set(`${under}/${key}`, JSON.stringify(value));
  };
  const head = kind.head(doc);
  if (head) read(head, "");
  for (const [id, map] of kind.entries(doc)) read(map, id);
  return values;
}

/** The places where two readings differ. */
export function changed(before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>): string[] {
  return [...new Set([...before.keys(), ...after.keys()])].filter((at) => before.get(at) !== after.get(at));
}

const START = -1;

/** Who set which value in which place; an absence is a value too. */
export class Witness {
  private readonly authors = new Map<string, Set<number>>();

  constructor(start: ReadonlyMap<string, string>) {
    for (const [at, value] of start) this.note(at, value, START);
  }

  saw(before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>, who: number): void {
    for (const at of changed(before, after)) {
      if (!before.has(at)) this.note(at, undefined, START);
      this.note(at, after.get(at), who);
    }
  }

  /** True when somebody set it. Where nothing has ever been, absence is nobody's. */
  given(at: string, value: string | undefined): boolean {
    return this.authors.get(`${at} ${value}`) !== undefined;
  }

  /** Who set it, if nobody else has set the same. */
  only(at: string, value: string | undefined): number | undefined {
    const [one, ...more] = this.authors.get(`${at} ${value}`) ?? [];
    return more.length === 0 && one !== START ? one : undefined;
  }

  private note(at: string, value: string | undefined, who: number): void {
    const key = `${at} ${value}`;
    this.authors.set(key, (this.authors.get(key) ?? new Set()).add(who));
  }
}
