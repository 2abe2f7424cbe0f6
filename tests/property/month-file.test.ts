/** A month file taken into an empty month comes out as it went in, up to the order of keys and of slots. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { expandMonth } from "#lib/month/expand.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { importMonth } from "#lib/programme/import-file.ts";
import { type MonthStudio, monthFileOf } from "#lib/programme/month-file.ts";
import { MonthReader } from "#lib/programme/month-reader.ts";
import { readMonthState } from "#lib/programme/read.ts";
import { often } from "#tests/support/long.ts";
import { smallMonth } from "#tests/support/small-months.ts";

const STRANGE = { room: () => false, coach: () => false, plan: () => false };
const NOW = { at: Date.UTC(2026, 2, 1), signedAt: null, nearUntil: "" };

/** A studio that knows nobody in the file: all of it comes from the document. */
const strangeStudio = ({ studio, zone }: MonthFile): MonthStudio => ({
  ...studio,
  zone,
  rooms: {},
  coaches: {},
  plans: {},
});

const taken = (file: MonthFile): Y.Doc => {
  const doc = createMonthDoc("2026-03");
  doc.transact(() => importMonth(doc, file, STRANGE, NOW));
  return doc;
};
const byId = (file: MonthFile) => ({ ...file, slots: [...file.slots].sort((a, b) => (a.id < b.id ? -1 : 1)) });

/** Every class as it is, without its number and its time. */
const unnumbered = (file: MonthFile) => ({
  ...file,
  changedAt: "",
  slots: expandMonth(file)
    .map(({ sequence: _n, changedAt: _a, ...slot }) => slot)
    .sort((a, b) => (a.id < b.id ? -1 : 1)),
});

describe("a month file in a document", () => {
  it("comes out as it went in", () => {
    fc.assert(
      fc.property(smallMonth, (file) => {
        const doc = taken(file);
        expect(byId(monthFileOf(readMonthState(doc), strangeStudio(file)))).toEqual(byId(file));
        const copy = new Y.Doc();
        Y.applyUpdate(copy, Y.encodeStateAsUpdate(doc));
        expect(readMonthState(copy)).toEqual(readMonthState(doc));
      }),
      { numRuns: often(60, 2000) },
    );
  });

  it("takes the place of another month, which then is as the file says but for what was called off", () => {
    fc.assert(
      fc.property(smallMonth, smallMonth, (first, second) => {
        const doc = taken(first);
        // Within the first hour nobody has been told by a notice or a signed month; calendars may have been read.
        doc.transact(() => importMonth(doc, second, STRANGE, { ...NOW, at: NOW.at + 3_600_000 }));
        const file = monthFileOf(readMonthState(doc), strangeStudio(second));
        expect(unnumbered(file)).toEqual(unnumbered(second));
        const numbers = new Map(file.slots.map(({ id, sequence = 0 }) => [id, sequence]));
        for (const { id, date, sequence = 0 } of [...first.slots, ...second.slots])
          if (date >= second.dates.from && numbers.has(id)) expect(numbers.get(id)).toBeGreaterThanOrEqual(sequence);
      }),
      { numRuns: often(40, 1000) },
    );
  });

  it("keeps the same objects where nothing changed", () => {
    fc.assert(
      fc.property(smallMonth, (file) => {
        const doc = taken(file);
        const reader = new MonthReader(doc);
        const state = reader.read();
        doc.transact(() => importMonth(doc, file, STRANGE, NOW));
        expect(reader.read()).toBe(state);
        const studio = strangeStudio(file);
        const first = monthFileOf(state, studio);
        expect(monthFileOf(reader.read(), { ...studio }, first)).toBe(first);
        expect(monthFileOf(readMonthState(doc), { ...studio }, first)).toBe(first);
      }),
      { numRuns: often(25, 500) },
    );
  });
});
