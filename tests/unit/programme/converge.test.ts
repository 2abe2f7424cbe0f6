/** Two to three people write one month over a network that delays and reorders: every copy ends the same. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { createMonthDoc } from "#lib/programme/create.ts";
import { readDeletedSlots, readMonth } from "#lib/programme/read.ts";
import { addSlot, deleteSlot, moveSlot, restoreSlot, setSlotField } from "#lib/programme/write.ts";

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
  fc.record({ op: fc.constant("delete" as const), writer, pick }),
  fc.record({ op: fc.constant("restore" as const), writer, pick }),
  fc.record({ op: fc.constant("deliver" as const), writer, to: writer, order: pick }),
);
type Op = typeof op extends fc.Arbitrary<infer T> ? T : never;

class Studio {
  readonly docs: Y.Doc[];
  readonly added: string[] = ["s0"];
  /** Updates on their way: inbox[to]. */
  readonly inbox: Uint8Array[][] = [[], [], []];
  #n = 0;

  constructor() {
    const first = createMonthDoc("2026-11", [
      {
        id: "s0",
        date: "2026-11-02",
        time: "09:00",
        minutes: 45,
        theme: "",
        coachId: null,
        roomId: null,
        planId: null,
        note: "",
      },
    ]);
    const seed = Y.encodeStateAsUpdate(first);
    this.docs = [0, 1, 2].map((i) => {
      const doc = new Y.Doc();
      Y.applyUpdate(doc, seed, "network");
      doc.on("update", (bytes: Uint8Array, origin: unknown) => {
        if (origin === "network") return;
        for (const to of [0, 1, 2]) if (to !== i) this.inbox[to]?.push(bytes);
      });
      return doc;
    });
  }

  run(o: Op): void {
    const doc = this.docs[o.writer] as Y.Doc;
    const w = { doc, origin: "me" };
    if (o.op === "deliver") {
      this.deliver(o.to, o.order);
      return;
    }
    if (o.op === "add") {
      const id = `s${++this.#n}`;
      const slot = { id, date: o.date, time: o.time, minutes: 30, theme: "", coachId: null, roomId: null };
      if (addSlot(w, { ...slot, planId: null, note: "" })) this.added.push(id);
      return;
    }
    const id = this.added[o.pick % this.added.length] as string;
    if (o.op === "move") moveSlot(w, id, { date: o.date, time: o.time });
    else if (o.op === "note") this.appendNote(w, id, o.word);
    else if (o.op === "coach") setSlotField(w, id, "coachId", o.coach);
    else if (o.op === "delete") deleteSlot(w, id, 1);
    else restoreSlot(w, id);
  }

  /** Typing at the end of whatever the note says on this copy. */
  appendNote(w: { doc: Y.Doc; origin: unknown }, id: string, word: string): void {
    const slot = readMonth(w.doc).slots.find((s) => s.id === id);
    if (slot) setSlotField(w, id, "note", `${slot.note}${word}`);
  }

  deliver(to: number, order: number): void {
    const box = this.inbox[to] as Uint8Array[];
    const [bytes] = box.length > 0 ? box.splice(order % box.length, 1) : [];
    if (bytes) Y.applyUpdate(this.docs[to] as Y.Doc, bytes, "network");
  }

  settle(): void {
    for (const to of [0, 1, 2]) while ((this.inbox[to] as Uint8Array[]).length > 0) this.deliver(to, 0);
  }
}

describe("a month written by several", () => {
  it("ends the same on every copy, with every slot once and every letter kept", () => {
    let delivered = 0;
    fc.assert(
      fc.property(fc.array(op, { minLength: 5, maxLength: 60 }), (ops) => {
        const studio = new Studio();
        const letters = { typed: 0 };
        for (const o of ops) {
          const before = o.op === "note" ? totalNote(studio.docs[o.writer] as Y.Doc) : 0;
          studio.run(o);
          if (o.op === "note") letters.typed += totalNote(studio.docs[o.writer] as Y.Doc) - before;
          if (o.op === "deliver") delivered++;
        }
        studio.settle();
        const views = studio.docs.map((doc) => ({ month: readMonth(doc), gone: readDeletedSlots(doc) }));
        expect(views[1]).toEqual(views[0]);
        expect(views[2]).toEqual(views[0]);
        const ids = views[0]?.month.slots.map((s) => s.id).concat(views[0].gone.map((g) => g.slot.id)) ?? [];
        expect([...ids].sort()).toEqual([...studio.added].sort());
        expect(totalNote(studio.docs[0] as Y.Doc)).toBe(letters.typed);
        for (const doc of studio.docs) expect(doc.store.pendingStructs).toBeNull();
      }),
      { numRuns: 150 },
    );
    expect(delivered).toBeGreaterThan(0);
  });
});

/** Letters in all notes, of slots taken out too. */
function totalNote(doc: Y.Doc): number {
  const living = readMonth(doc).slots;
  return [...living, ...readDeletedSlots(doc).map((g) => g.slot)].reduce((sum, s) => sum + s.note.length, 0);
}
