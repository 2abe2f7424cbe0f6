/**
 * What is kept of a month while three people write it says what a fresh reading of the same document says, after every edit,
 * undo, delivery and reload; and a class that says the same stays the same object.
 */
import fc from "fast-check";
import { expect, it } from "vitest";
import * as Y from "yjs";
import type { ActUndo } from "#lib/client/act-undo.ts";
import { act as asAct, type Writer } from "#lib/doc/write.ts";
import { keepRevisions } from "#lib/programme/keep-revisions.ts";
import { monthParts } from "#lib/programme/layout.ts";
import { MonthReader, type MonthState } from "#lib/programme/month-reader.ts";
import { deletedSlots, monthClasses, readDeletedSlots, readMonthState } from "#lib/programme/read.ts";
import { openSlotNote } from "#lib/programme/write.ts";
import {
  addRegulars,
  addTheme,
  nameTextOf,
  setCoachTime,
  setFillList,
  setHoliday,
  setWish,
  takeOutEntry,
} from "#lib/programme/write-lists.ts";
import { putBackLine, takeOutLine } from "#lib/programme/write-pattern.ts";
import { often } from "#tests/support/long.ts";
import { MONTH } from "./undo-pages.ts";

const n = fc.nat({ max: 5000 });
const step = fc.record({ who: fc.nat({ max: 2 }), does: fc.nat({ max: 40 }), on: n, to: n });
type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

const letter = (text: Y.Text | undefined, to: number) => void text?.insert(to % (text.length + 1), "a");
const classAt = (w: Writer, on: number): string => {
  const classes = monthClasses(readMonthState(w.doc));
  return classes[on % Math.max(1, classes.length)]?.id ?? "a";
};
const theme = (on: number) => `t${on % 3}`;
const group = (on: number) => `g${on % 3}`;
const date = (on: number) => `2026-11-${String(1 + (on % 30)).padStart(2, "0")}`;

/** Whatever a month holds besides what `MONTH.acts` change. */
const MORE: readonly ((w: Writer, s: Step) => void)[] = [
  (w, s) => letter(openSlotNote(w, classAt(w, s.on)), s.to),
  (w, s) => letter(monthParts(w.doc).title, s.to),
  (w, s) => addTheme(w, theme(s.on), { name: "Pull" }),
  (w, s) => letter(nameTextOf(w.doc, "themes", theme(s.on)), s.to),
  (w, s) => addRegulars(w, group(s.on), { name: "Early birds" }),
  (w, s) => letter(nameTextOf(w.doc, "regulars", group(s.on)), s.to),
  (w, s) => takeOutEntry(w, s.to % 2 ? "themes" : "regulars", s.to % 2 ? theme(s.on) : group(s.on), s.to),
  (w, s) => setHoliday(w, date(s.on), s.to % 2 ? "Fair" : null),
  (w, s) => setCoachTime(w, "u-0", "away", "k", { from: date(s.on), to: date(s.on) }),
  (w, s) => setWish(w, classAt(w, s.on), "p-1", s.to % 3 ? { weight: s.to % 9 } : null),
  (w, s) => setFillList(w, "plans", s.to % 2 ? ["p-1", "p-2"] : null),
  (w, s) => takeOutLine(w, "mon", date(s.on), { at: s.to, signedAt: null }),
  (w) => putBackLine(w, "mon"),
  // A page of version 1 has typed a theme in a class.
  (w, s) =>
    monthParts(w.doc)
      .slots.get("a")
      ?.set("theme", new Y.Text(`Legs ${s.to % 3}`)),
  (w, s) => monthParts(w.doc).slots.get("b")?.set("themeId", theme(s.on)),
  (w, s) =>
    monthParts(w.doc)
      .slots.get("c")
      ?.set(`regulars.${group(s.on)}`, s.to),
  // Damaged values and strangers.
  (w, s) => monthParts(w.doc).changed.set(`mon-20261112.${s.to % 2 ? "time" : "coachId"}`, s.on % 3 ? "25:99" : ""),
  (w, s) =>
    monthParts(w.doc)
      .slots.get("b")
      ?.set("time", s.to % 2 ? 7 : "07:15"),
  (w, s) => monthParts(w.doc).head.set("from", s.to % 2 ? "2026-11-05" : "2026-11-01"),
];

class Page {
  doc!: Y.Doc;
  undo!: ActUndo;
  reader!: MonthReader;
  last!: MonthState;

  constructor(state: Uint8Array) {
    this.open(state);
  }

  open(state: Uint8Array): void {
    this.doc = new Y.Doc();
    this.undo = MONTH.undo({ doc: this.doc, origin: "own" });
    this.reader = new MonthReader(this.doc);
    Y.applyUpdate(this.doc, state, "network");
    this.last = this.reader.read();
  }

  check(): void {
    const state = this.reader.read();
    expect(state).toEqual(readMonthState(this.doc));
    expect(deletedSlots(this.reader)).toEqual(readDeletedSlots(this.doc));
    const was = new Map(monthClasses(this.last).map((slot) => [slot.id, slot]));
    for (const slot of monthClasses(state)) {
      const before = was.get(slot.id);
      if (before && before !== slot && isSingle(slot.id)) expect(before).not.toEqual(slot);
    }
    this.last = state;
  }
}
const isSingle = (id: string): boolean => !id.startsWith("mon-");

class Three {
  readonly hub = new Y.Doc();
  readonly pages: readonly Page[];
  private readonly carry: () => void;
  private now = Date.UTC(2026, 10, 1);
  private fresh = 100;

  constructor() {
    Y.applyUpdate(this.hub, MONTH.start);
    this.pages = [0, 1, 2].map(() => new Page(MONTH.start));
    this.carry = keepRevisions(this.hub, () => ({ at: this.now, signedAt: null, nearUntil: "" }));
  }

  take(s: Step): void {
    const page = this.pages[s.who] as Page;
    const w = { doc: page.doc, origin: "own" };
    const does = [
      ...MONTH.acts.map(
        (act) =>
          (of: Writer, { on, to }: Step) =>
            act(of, { kind: 0, on, to }, this.fresh++),
      ),
      ...MORE,
    ];
    const act = does[s.does];
    if (act) page.undo.step(() => asAct(w, () => act(w, s)));
    else if (s.does % 4 === 0) page.undo.undo();
    else if (s.does % 4 === 1) page.undo.redo();
    else if (s.does === 39) page.open(Y.encodeStateAsUpdate(page.doc));
    else this.meet(page);
    page.check();
  }

  private meet({ doc }: Page): void {
    this.now += 3_600_000;
    Y.applyUpdate(this.hub, Y.encodeStateAsUpdate(doc, Y.encodeStateVector(this.hub)), "network");
    this.carry();
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(this.hub, Y.encodeStateVector(doc)), "network");
  }
}

it("keeps of a month what a fresh reading says, and the same objects", () => {
  fc.assert(
    fc.property(fc.array(step, { minLength: 5, maxLength: 50 }), (steps) => {
      const three = new Three();
      for (const s of steps) three.take(s);
    }),
    { numRuns: often(80, 3000) },
  );
});
