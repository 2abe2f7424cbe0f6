/** The change into an item of a plan: between the two moves, whatever lies between them. */
import { expect, test } from "vitest";
import { changeInto } from "#lib/figure/change-of-plan.ts";
import { drawChange } from "#lib/figure/drawing/draw-change.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";

const plan = UPPER_BODY_AND_TRUNK;
const moves = plan.items.filter(isMoveItem);

test("nothing for the first move, for what is no move, and beside a move that is not known", () => {
  expect(changeInto(plan, moves[0]?.id ?? "")).toBeNull();
  for (const item of plan.items) if (!isMoveItem(item)) expect(changeInto(plan, item.id)).toBeNull();
  const second = moves[1]?.id ?? "";
  const items = plan.items.map((item) => (item.id === second ? { ...item, move: "nowhere" } : item));
  expect(changeInto({ ...plan, items }, second)).toBeNull();
  expect(changeInto({ ...plan, items }, moves[2]?.id ?? "")).toBeNull();
});

test("the springs of the two moves, also over a pause and a heading", () => {
  for (const [n, item] of moves.entries()) {
    const before = moves[n - 1];
    const change = changeInto(plan, item.id);
    if (!before || !change) continue;
    const count = (act: string) => change.springs.filter((spring) => spring.act === act).length;
    const sum = (springs: Readonly<Record<string, number>>) => Object.values(springs).reduce((a, b) => a + b, 0);
    expect(count("stays") + count("comes-off")).toBe(sum(before.springs));
    expect(count("stays") + count("goes-on")).toBe(sum(item.springs));
  }
});

test("without its coils a drawing has no labels and is lower; none is higher than what it shows", () => {
  const changed = moves.flatMap((item) => changeInto(plan, item.id) ?? []);
  expect(changed.length).toBeGreaterThan(10);
  for (const change of changed) {
    const whole = drawChange(change, { px: 320 });
    const bare = drawChange(change, { px: 320, coils: false });
    expect(bare.labels).toEqual([]);
    expect(bare.frame.height).toBeLessThan(whole.frame.height);
    expect(bare.frame.height / bare.frame.width).toBeLessThan(1.05);
  }
});
