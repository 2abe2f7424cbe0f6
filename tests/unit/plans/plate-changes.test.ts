/** What is marked on each plate since the plan was read. */
import { expect, test } from "vitest";
import type { MoveItem, PlanItem } from "#lib/plan/schema.ts";
import { plateChanges } from "#lib/plan-diff/plate-changes.ts";

const move = (id: string, rest: Partial<MoveItem> = {}): MoveItem => ({
  kind: "move",
  id,
  move: "row",
  side: "both",
  seconds: 60,
  springs: { light: 1 },
  script: [{ kind: "start", text: "Row." }],
  ...rest,
});
const before: PlanItem[] = [move("a"), move("b"), move("c"), { kind: "pause", id: "p", seconds: 30 }];
const nothing = { added: false, moved: false, seconds: null, springs: null, words: false, other: false };

test("nothing is marked on what is as it was", () => {
  expect(plateChanges(before, structuredClone(before)).size).toBe(0);
});

test("seconds and springs are marked with what they were, words and the rest as such", () => {
  const after = [
    move("a", { seconds: 45 }),
    move("b", { springs: {}, script: [{ kind: "start", text: "Row now." }] }),
    move("c", { side: "left" }),
    { kind: "pause", id: "p", seconds: 40 } as const,
  ];
  const changes = plateChanges(before, after);
  expect(changes.get("a")).toEqual({ ...nothing, seconds: 60 });
  expect(changes.get("b")).toEqual({ ...nothing, springs: { light: 1 }, words: true });
  expect(changes.get("c")).toEqual({ ...nothing, other: true });
  expect(changes.get("p")).toEqual({ ...nothing, other: true });
});

test("what is new and what has another place is marked, and what only stands beside it is not", () => {
  const [a, b, c, p] = before as [PlanItem, PlanItem, PlanItem, PlanItem];
  const changes = plateChanges(before, [c, a, move("d"), b, p]);
  expect([...changes].map(([id, { added, moved }]) => [id, added, moved])).toEqual([
    ["c", false, true],
    ["d", true, false],
  ]);
});
