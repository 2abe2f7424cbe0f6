/** Two to three people write one month over a network that delays and reorders: every copy ends the same. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { expandMonth } from "#lib/month/expand.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { keepRevisions } from "#lib/programme/keep-revisions.ts";
import { monthParts } from "#lib/programme/layout.ts";
import { type MonthStudio, monthFileOf } from "#lib/programme/month-file.ts";
import type { MonthState } from "#lib/programme/month-reader.ts";
import { monthClasses, readDeletedSlots, readMonthState } from "#lib/programme/read.ts";
import { addSlot, changeSlot, openSlotNote, putBackSlot, takeOutSlot } from "#lib/programme/write.ts";
import { addRegulars, setHoliday } from "#lib/programme/write-lists.ts";
import { changeLine, changeLineFrom } from "#lib/programme/write-pattern.ts";
import { often } from "#tests/support/long.ts";

const day = fc.integer({ min: 1, max: 30 }).map((d) => `2026-11-${String(d).padStart(2, "0")}`);
const time = fc.integer({ min: 0, max: 95 }).map((q) => {
  const hours = String(Math.floor(q / 4)).padStart(2, "0");
  return `${hours}:${String((q % 4) * 15).padStart(2, "0")}`;
});
const writer = fc.integer({ min: 0, max: 2 });
const pick = fc.nat({ max: 20 });
const op = fc.oneof(
  fc.record({ op: fc.constant("add" as const), writer, date: day, time }),
  fc.record({ op: fc.constant("move" as const), writer, pick, date: day, time }),
  fc.record({ op: fc.constant("note" as const), writer, pick, word: fc.stringMatching(/^[a-z]{1,6}$/) }),
  fc.record({ op: fc.constant("coach" as const), writer, pick, coach: fc.constantFrom("ines", "marta", "jonas") }),
  fc.record({ op: fc.constant("group" as const), writer, pick, group: fc.constantFrom("g0", "g1", "g2") }),
  fc.record({ op: fc.constant("out" as const), writer, pick }),
  fc.record({ op: fc.constant("back" as const), writer, pick }),
  fc.record({ op: fc.constant("line" as const), writer, time }),
  fc.record({ op: fc.constant("later" as const), writer, pick, coach: fc.constantFrom("ines", "marta", "jonas") }),
  fc.record({ op: fc.constant("holiday" as const), writer, date: day, pick }),
  fc.record({ op: fc.constant("deliver" as const), writer, to: writer, order: pick }),
);
type Op = typeof op extends fc.Arbitrary<infer T> ? T : never;

const OCCURRENCES = ["mon-20261102", "mon-20261109", "mon-20261116", "mon-20261123", "mon-20261130"];

class Studio {
  readonly docs: Y.Doc[];
  readonly added: string[] = ["s0", ...OCCURRENCES];
  /** Updates on their way: inbox[to]. The fourth is the server, which takes each as it comes and notes revisions. */
  readonly inbox: Uint8Array[][] = [[], [], []];
  readonly server = new Y.Doc();
  now = Date.UTC(2026, 10, 1);
  typed = "";
  #n = 0;
  readonly #carry: () => void;

  constructor() {
    const first = createMonthDoc("2026-11", {
      slots: [{ id: "s0", date: "2026-11-02", start: "09:00", minutes: 45 }],
      pattern: [{ id: "mon", days: [1], start: "07:00", minutes: 30 }],
      regulars: { g0: { name: "A" }, g1: { name: "B" }, g2: { name: "C" } },
    });
    const seed = Y.encodeStateAsUpdate(first);
    Y.applyUpdate(this.server, seed, "network");
    this.#carry = keepRevisions(this.server, () => ({ at: this.now, signedAt: null, nearUntil: "" }));
    this.server.on("update", (bytes: Uint8Array, origin: unknown) => {
      for (const to of [0, 1, 2]) if (to !== origin) this.inbox[to]?.push(bytes);
    });
    this.docs = [0, 1, 2].map((i) => {
      const doc = new Y.Doc();
      Y.applyUpdate(doc, seed, "network");
      doc.on("update", (bytes: Uint8Array, origin: unknown) => {
        if (origin !== "network") this.outbox[i]?.push(bytes);
      });
      return doc;
    });
  }
  /** Pages that are offline keep theirs. */
  readonly outbox: Uint8Array[][] = [[], [], []];

  run(o: Op): void {
    const doc = this.docs[o.writer] as Y.Doc;
    const w = { doc, origin: "me" };
    if (o.op === "deliver") {
      this.send(o.writer);
      this.deliver(o.to, o.order);
    } else if (o.op === "add") {
      const id = `s${++this.#n}`;
      if (addSlot(w, { id, date: o.date, start: o.time, minutes: 30 }, this.now)) this.added.push(id);
    } else if (o.op === "line") changeLine(w, "mon", { start: o.time });
    else if (o.op === "later") changeLineFrom(w, OCCURRENCES[o.pick % 5] as string, { coach: o.coach });
    else if (o.op === "holiday") setHoliday(w, o.date, o.pick % 2 ? "Fair" : null);
    else this.change(o, w, this.added[o.pick % this.added.length] as string);
  }

  change(o: Op, w: { doc: Y.Doc; origin: unknown }, id: string): void {
    if (o.op === "move") changeSlot(w, id, { date: o.date, start: o.time });
    else if (o.op === "note") this.appendNote(w, id, o.word);
    else if (o.op === "coach") changeSlot(w, id, { coach: o.coach });
    else if (o.op === "group") {
      const now = slotIn(w.doc, id)?.regulars ?? [];
      changeSlot(w, id, { regulars: now.includes(o.group) ? now.filter((g) => g !== o.group) : [...now, o.group] });
    } else if (o.op === "out") takeOutSlot(w, id, { at: this.now, signedAt: null });
    else if (o.op === "back") putBackSlot(w, id);
  }

  /** Typing at the end of whatever the note says on this copy. */
  appendNote(w: { doc: Y.Doc; origin: unknown }, id: string, word: string): void {
    const text = openSlotNote(w, id);
    if (!text) return;
    w.doc.transact(() => text.insert(text.length, word), "me");
    this.typed += word;
  }

  /** A page's updates reach the server in the order in which it made them. */
  send(from: number): void {
    for (const bytes of (this.outbox[from] as Uint8Array[]).splice(0)) {
      this.now += 1000;
      const before = monthFileOf(readMonthState(this.server), STUDIO);
      Y.applyUpdate(this.server, bytes, from);
      this.#carry();
      expectForward(before, monthFileOf(readMonthState(this.server), STUDIO));
    }
  }

  deliver(to: number, order: number): void {
    const box = this.inbox[to] as Uint8Array[];
    const [bytes] = box.length > 0 ? box.splice(order % box.length, 1) : [];
    if (bytes) Y.applyUpdate(this.docs[to] as Y.Doc, bytes, "network");
  }

  settle(): void {
    for (const from of [0, 1, 2]) this.send(from);
    for (const to of [0, 1, 2]) while ((this.inbox[to] as Uint8Array[]).length > 0) this.deliver(to, 0);
  }
}

const STUDIO: MonthStudio = {
  ...{ uid: "6f0c4b52-7f4e-4c7e-9d1e-0d2a3b4c5d6e", name: "Tidewater", zone: "Europe/Lisbon" },
  ...{ rooms: {}, coaches: {}, plans: {} },
};
const slotIn = (doc: Y.Doc, id: string) => monthClasses(readMonthState(doc)).find((slot) => slot.id === id);

/** What RFC 5545 §3.8.7.4 asks of SEQUENCE: it never falls, and rises with what people plan by. */
function expectForward(before: MonthFile, after: MonthFile): void {
  const was = new Map(expandMonth(before).map((slot) => [slot.id, slot]));
  for (const slot of expandMonth(after)) {
    const old = was.get(slot.id);
    if (!old) continue;
    const moved = (["date", "start", "minutes", "room", "coach"] as const).some(
      (key) => (old[key] ?? null) !== (slot[key] ?? null),
    );
    const turned = (old.out ?? false) !== (slot.out ?? false);
    expect((slot.sequence ?? 0) - (old.sequence ?? 0)).toBe(moved || turned ? 1 : 0);
    expect((slot.changedAt ?? "") >= (old.changedAt ?? "")).toBe(true);
  }
}

describe("a month written by several", () => {
  it("ends the same on every copy, with every class once and every letter kept; numbers never go back", () => {
    let delivered = 0;
    fc.assert(
      fc.property(fc.array(op, { minLength: 5, maxLength: 60 }), (ops) => {
        const studio = new Studio();
        for (const o of ops) {
          studio.run(o);
          if (o.op === "deliver") delivered++;
        }
        studio.settle();
        const states = [...studio.docs, studio.server].map((doc) => ({
          state: readMonthState(doc),
          gone: readDeletedSlots(doc),
        }));
        for (const other of states.slice(1)) expect(other).toEqual(states[0]);
        const ids = [
          ...monthClasses(states[0]?.state as MonthState),
          ...(states[0]?.gone.map(({ slot }) => slot) ?? []),
        ].map(({ id }) => id);
        // A holiday takes an occurrence away that nobody has changed.
        const there = new Set(ids);
        for (const id of studio.added) if (!id.startsWith("mon-")) expect(there.has(id)).toBe(true);
        expect([...studio.typed].sort().join("")).toBe([...lettersOf(studio.server)].sort().join(""));
        for (const doc of studio.docs) expect(doc.store.pendingStructs).toBeNull();
      }),
      { numRuns: often(30, 500) },
    );
    expect(delivered).toBeGreaterThan(0);
  });

  it("keeps what two people change in one occurrence at the same moment, their letters included", () => {
    const [a, b] = [
      createMonthDoc("2026-11", { pattern: [{ id: "mon", days: [1], start: "07:00", minutes: 30, note: "towels" }] }),
      new Y.Doc(),
    ];
    Y.applyUpdate(b, Y.encodeStateAsUpdate(a));
    const [wa, wb] = [
      { doc: a, origin: 1 },
      { doc: b, origin: 2 },
    ];
    changeSlot(wa, "mon-20261109", { coach: "ines", regulars: ["g0"] });
    changeSlot(wb, "mon-20261109", { start: "07:30", regulars: ["g1"] });
    const texts = [openSlotNote(wa, "mon-20261109"), openSlotNote(wb, "mon-20261109")];
    texts[0]?.insert(6, " and water");
    texts[1]?.insert(0, "two ");
    for (const w of [wa, wb]) for (const id of ["g0", "g1"]) addRegulars(w, id, { name: id });
    Y.applyUpdate(a, Y.encodeStateAsUpdate(b));
    Y.applyUpdate(b, Y.encodeStateAsUpdate(a));
    expect(slotIn(a, "mon-20261109")).toEqual(slotIn(b, "mon-20261109"));
    expect(slotIn(a, "mon-20261109")).toMatchObject({ coach: "ines", start: "07:30", regulars: ["g0", "g1"] });
    expect(slotIn(a, "mon-20261109")?.note?.split("\n").sort()).toEqual(["towels and water", "two towels"]);
  });
});

/** Every letter in every note text of the document. */
function lettersOf(doc: Y.Doc): string {
  const { slots, changed } = monthParts(doc);
  const texts = [...[...slots.values()].map((map) => map.get("note")), ...changed.values()];
  return texts
    .filter((text) => text instanceof Y.Text)
    .map(String)
    .join("");
}
