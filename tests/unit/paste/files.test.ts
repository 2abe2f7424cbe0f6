/** Files that are dropped or chosen, what is marked in a typed row, and the class with the rows in it. */
import { describe, expect, test } from "vitest";
import { pasteContext } from "#app/_paste/context.ts";
import { classClock } from "#lib/clock/clock.ts";
import { decodeText, MAX_BYTES } from "#lib/paste/decode.ts";
import { draftsToItems, planWith } from "#lib/paste/drafts.ts";
import { typedParts } from "#lib/paste/typed-parts.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { SHORT_CLASS } from "#tests/browser/short-class.ts";
import { judgeOne, read, STUDIO } from "./studio.ts";

describe("the bytes of a file", () => {
  const utf8 = (text: string) => new TextEncoder().encode(text);
  test.each([
    ["UTF-8", utf8("Übung ½ min")],
    ["UTF-8 with its mark", utf8("\uFEFFÜbung ½ min")],
    ["UTF-16, low byte first", new Uint8Array([0xff, 0xfe, ...Buffer.from("Übung ½ min", "utf16le")])],
    ["UTF-16, high byte first", new Uint8Array([0xfe, 0xff, ...Buffer.from("Übung ½ min", "utf16le").swap16()])],
  ])("%s", (_say, bytes) => {
    const decoded = decodeText(bytes);
    expect(decoded).toEqual({ ok: true, text: "Übung ½ min" });
  });

  test("one-byte Western European text is read, with a note", () => {
    const decoded = decodeText(new Uint8Array(Buffer.from("Übung ½ min", "latin1")));
    expect(decoded).toMatchObject({ ok: true, text: "Übung ½ min", note: expect.stringContaining("accents") });
  });

  test.each([
    ["a spreadsheet's own file", new Uint8Array([0x50, 0x4b, 3, 4, 0, 0, 8, 0])],
    ["a picture", new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 1])],
  ])("%s is not text", (_say, bytes) => {
    expect(decodeText(bytes)).toMatchObject({ ok: false, say: expect.stringContaining("copy the cells") });
  });

  test("a file that is too large is refused with its size", () => {
    expect(decodeText(new Uint8Array(MAX_BYTES + 1))).toMatchObject({
      ok: false,
      say: expect.stringContaining("400,001"),
    });
  });
});

test("a typed row is cut where something was read, and loses no text", () => {
  const [row] = read("- Plank hold  60 s  heels high").rows;
  const parts = row ? typedParts(row) : [];
  expect(parts.map((p) => p.text).join("")).toBe("- Plank hold  60 s  heels high");
  expect(parts.filter((p) => p.of !== null).map((p) => [p.of, p.text])).toEqual([
    ["passed-over", "- "],
    ["move", "Plank hold"],
    ["time", "60 s"],
    ["words", "heels high"],
  ]);
});

test("the clock of the class with the rows in it", () => {
  const { drafts } = judgeOne("Plank hold 40 s 1 light");
  const items = draftsToItems(drafts, () => "pasted");
  const plan = planWith(SHORT_CLASS, STUDIO.moves, { afterId: "row-left", items });
  expect(plan.items.map((item) => item.id)).toEqual(["pulls", "row-right", "row-left", "pasted", "press"]);
  const row = classClock(plan).rows.find((r) => r.item === "pasted");
  expect(row && row.end - row.start).toBe(40);
  expect(SHORT_CLASS.items).toHaveLength(4);
  expect(planWith(SHORT_CLASS, {}, { afterId: null, items: [] }).items).toEqual(SHORT_CLASS.items);
});

test("the library of a plan: its own moves win, and what was taken out of the studio's is not found", () => {
  const context = pasteContext(
    { moves: STARTER_MOVES, equipment: STUDIO.equipment, archived: ["plank-hold"] },
    SHORT_CLASS,
  );
  expect(context.moves["plank-hold"]).toBeUndefined();
  expect(context.moves["seated-row"]?.name).toBe("Seated row");
  expect(context.equipment).toBe(SHORT_CLASS.equipment);
});
