/** How a class lies on paper: pages filled in order, a heading with what it leads, figures only where they cost no page. */
import { expect, test } from "vitest";
import type { SheetRow } from "#lib/card/sheet.ts";
import { layoutOfPrint } from "#lib/card/sheet-room.ts";

type MoveRow = Extract<SheetRow, { kind: "move" }>;

const move = (number: number, acts: readonly string[] = ["face the back"]): MoveRow => ({
  kind: "move",
  id: `m${number}`,
  number,
  title: "Kneeling row",
  side: null,
  start: 0,
  seconds: 60,
  change: 9,
  springs: [{ id: "light", label: "light", count: 1, stiffnessNPerMm: 0.1 }],
  newSprings: false,
  starts: "Row.",
  changes: acts.map((words) => ({ kind: "body", words })),
});
const heading = (id: string): SheetRow => ({ kind: "heading", id, title: "Arms" });
const moves = (count: number): MoveRow[] => Array.from({ length: count }, (_, n) => move(n + 1));
const high = () => 25;

test("a short class has one page and all its figures", () => {
  const { pages, drawn } = layoutOfPrint(moves(5), high);
  expect(pages).toHaveLength(1);
  expect([...drawn].sort()).toEqual(["m1", "m2", "m3", "m4", "m5"]);
});

test("figures never cost a page, and fill the room that is left", () => {
  for (const count of [8, 16, 20, 26, 33, 45]) {
    const bare = layoutOfPrint(moves(count), () => null);
    const { pages, drawn } = layoutOfPrint(moves(count), high);
    expect(pages.length).toBe(bare.pages.length);
    if (drawn.size < count)
      expect(layoutOfPrint(moves(count), (id) => (drawn.has(id) ? 25 : null)).drawn).toEqual(drawn);
  }
  expect(layoutOfPrint(moves(20), high).drawn.size).toBeGreaterThan(5);
});

test("every row stands on one page, in order, and no page ends with a heading", () => {
  const rows = moves(40).flatMap((row, n) => (n % 3 === 0 ? [heading(`h${n}`), row] : [row]));
  const { pages } = layoutOfPrint(rows, high);
  expect(pages.flat().map(({ id }) => id)).toEqual(rows.map(({ id }) => id));
  expect(pages.length).toBeGreaterThan(1);
  for (const page of pages) expect(page.at(-1)?.kind).toBe("move");
});

test("where nothing changes, no figure is drawn", () => {
  expect(layoutOfPrint([move(1), move(2, [])], high).drawn).toEqual(new Set(["m1"]));
});
