/** The rows of the print sheet: times, sides, springs and changes as the card has them. */
import { expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import { sheetRows } from "#lib/card/sheet.ts";
import { samplePlan } from "./sample-plan.ts";

const card = buildCard({
  studio: { name: "Tholepin Strength", town: "Port Ellery" },
  planId: "rows",
  number: 1,
  room: { id: "harbour", name: "Harbour room" },
  plan: samplePlan(),
  issuedAt: 0,
  expiresAt: 1,
});

test("one row per item, in order, with moves numbered", () => {
  const rows = sheetRows(card);
  expect(rows.map((row) => [row.kind, row.title, row.kind === "move" ? row.number : null])).toEqual([
    ["heading", "Trunk", null],
    ["move", "Forearm plank to pike", 1],
    ["pause", "Sip of water", null],
    ["heading", "Pull --> and reach", null],
    ["move", "Kneeling one-arm row", 2],
    ["move", "Kneeling one-arm row", 3],
  ]);
});

test("a move's row has start, length, change before it, springs and side", () => {
  const [, , , , left, right] = sheetRows(card);
  expect(left).toMatchObject({ start: 130, seconds: 45, change: 20, side: "left", newSprings: true });
  expect(left?.kind === "move" && left.springs.map((s) => [s.label, s.count])).toEqual([["heavy", 1]]);
  expect(right).toMatchObject({ start: 180, change: 5, side: "right", newSprings: false });
  expect(right?.kind === "move" && right.changes.map((c) => c.words)).toEqual([
    "put the handle down",
    "handle in the other hand",
  ]);
});
