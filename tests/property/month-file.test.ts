/** A month file taken into an empty month comes out as it went in, up to the order of keys and of slots. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import type { MonthFile } from "#lib/month/types.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { importMonth } from "#lib/programme/import-file.ts";
import { type MonthStudio, monthFileOf } from "#lib/programme/month-file.ts";
import { MonthReader } from "#lib/programme/month-reader.ts";
import { readMonthState } from "#lib/programme/read.ts";
import { often } from "#tests/support/long.ts";
import { smallMonth } from "#tests/support/small-months.ts";

const STRANGE = { room: () => false, coach: () => false, plan: () => false };
const NOW = { at: Date.UTC(2026, 2, 1), signedAt: null };

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
        // Within the first hour nobody has been told of anything.
        doc.transact(() => importMonth(doc, second, STRANGE, { ...NOW, at: NOW.at + 3_600_000 }));
        const { changedAt: _, ...file } = byId(monthFileOf(readMonthState(doc), strangeStudio(second)));
        const { changedAt: _c, ...wanted } = byId(second);
        expect(file).toEqual(wanted);
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
