/** What holds an item, as screens ask it: the one above, a tie and whoever has gone astray from it, what may come before. */
import { describe, expect, test } from "vitest";
import type { MoveItem, PlanItem } from "#lib/plan/schema.ts";
import { aboveOf, blockAround, comesAfter, mayComeAfter, tieOf, tieState } from "#lib/plan/ties.ts";

type Hold = Pick<MoveItem, "keep" | "after">;
const item = (id: string, hold: Hold = {}): MoveItem => {
  return { id, kind: "move", move: "m", side: "both", seconds: 60, springs: {}, ...hold };
};
const heading = (id: string): PlanItem => ({ id, kind: "heading", title: id });
const pause: PlanItem = { id: "pause", kind: "pause", seconds: 20 };
const ids = (items: readonly PlanItem[]) => items.map((i) => i.id).join("");

describe("the one above", () => {
  const tied = item("b", { keep: "t" });
  const plan = { items: [item("a", { keep: "t" }), tied, item("c"), pause, item("d"), heading("h"), item("e")] };
  const above = (id: string) => aboveOf(plan, plan.items.find((i) => i.id === id) as MoveItem);

  test("is the move right above; a pause, a heading and the top are said", () => {
    expect(above("b")).toMatchObject({ is: "move", tied: true, item: { id: "a" } });
    expect(above("c")).toMatchObject({ is: "move", tied: false, item: { id: "b" } });
    expect([above("a").is, above("d").is, above("e").is]).toEqual(["top", "pause", "heading"]);
  });
});

describe("a tie", () => {
  test("of one is none", () => {
    const alone = item("a", { keep: "t" });
    expect(tieOf({ items: [alone, item("b")] }, alone)).toEqual([]);
    expect(tieState({ items: [alone] }, alone)).toBeUndefined();
  });

  test("says which members are beside an item and which are elsewhere", () => {
    const [a, b, c] = [item("a", { keep: "t" }), item("b", { keep: "t" }), item("c", { keep: "t" })];
    const together = { items: [a, b, c] };
    expect(tieState(together, b)).toMatchObject({ above: { id: "a" }, below: { id: "c" }, apart: [] });
    const astray = { items: [a, b, item("x"), c] };
    expect(tieState(astray, b)).toMatchObject({ above: { id: "a" }, below: undefined, apart: [{ id: "c" }] });
    expect(tieState(astray, c)).toMatchObject({
      above: undefined,
      below: undefined,
      apart: [{ id: "a" }, { id: "b" }],
    });
  });
});

test("a block is what is under a heading, up to the next", () => {
  const plan = { items: [item("x"), heading("h"), item("a"), item("b"), heading("k"), item("c")] };
  expect(ids(blockAround(plan, "b")?.items ?? [])).toBe("ab");
  expect(ids(blockAround(plan, "h")?.items ?? [])).toBe("ab");
  expect(ids(blockAround(plan, "c")?.items ?? [])).toBe("c");
  expect(blockAround(plan, "x")).toBeUndefined();
  expect(blockAround(plan, "gone")).toBeUndefined();
});

describe("coming after", () => {
  test("says of each whether it does", () => {
    const b = item("b", { after: ["c", "a"] });
    const said = comesAfter({ items: [item("a"), b, item("c")] }, b);
    expect(said.map(({ item: i, holds }) => [i.id, holds])).toEqual([
      ["c", false],
      ["a", true],
    ]);
  });

  test("is offered for what does not wait for the item, in its own block only", () => {
    const a = item("a");
    const plan = {
      items: [item("x"), heading("h"), a, item("b", { after: ["a"] }), item("c", { after: ["b"] }), item("d")],
    };
    expect(ids(mayComeAfter(plan, a))).toBe("d");
    const c = plan.items[4] as MoveItem;
    expect(ids(mayComeAfter(plan, c))).toBe("ad");
  });

  test("is not offered where a tie would contradict it", () => {
    // d waits for a, and c is tied to d: c and d both come after a.
    const a = item("a");
    const items = [a, item("b"), item("c", { keep: "t" }), item("d", { keep: "t", after: ["a"] })];
    expect(ids(mayComeAfter({ items }, a))).toBe("b");
    // Nothing comes after a neighbour it is tied to.
    expect(ids(mayComeAfter({ items }, items[3] as MoveItem))).toBe("b");
  });
});
