import { expect, test } from "vitest";
import type { Plan } from "#lib/plan/schema.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";

const moves = (plan: Plan) => plan.items.filter((item) => item.kind === "move");

/** The same plan read anew, so that nothing kept for it can be used. */
const fresh = (plan: Plan): Plan => structuredClone(plan);

function withItem(plan: Plan, at: number, seconds: number): Plan {
  const changed = moves(plan)[at];
  return { ...plan, items: plan.items.map((item) => (item === changed ? { ...changed, seconds } : item)) };
}

test("after a change of one item only its own step and the next are worked out again", () => {
  const was = walkSetups(WHOLE_BODY);
  const now = walkSetups(withItem(WHOLE_BODY, 4, 47));
  const again = now.flatMap((step, n) => (step === was[n] ? [] : [n]));
  expect(again).toEqual([4, 5]);
});

test.each([
  ["another item", (plan: Plan) => withItem(plan, 4, 47)],
  ["without an item", (plan: Plan) => ({ ...plan, items: plan.items.filter((item) => item !== moves(plan)[3]) })],
  ["more people", (plan: Plan) => ({ ...plan, people: 12 })],
  ["another room", (plan: Plan) => ({ ...plan, equipment: { ...plan.equipment, actionSeconds: { springOn: 9 } } })],
  [
    "a move that is another",
    (plan: Plan) => ({
      ...plan,
      moves: Object.fromEntries(
        Object.entries(plan.moves).map(([id, move]) => [id, { ...move, facing: "left" as const }]),
      ),
    }),
  ],
])("%s: what is kept and what is fresh are the same", (_, change) => {
  walkSetups(WHOLE_BODY);
  const changed = change(WHOLE_BODY);
  expect(walkSetups(changed)).toEqual(walkSetups(fresh(changed)));
  // And back, with tellings and without.
  expect(walkSetups({ ...WHOLE_BODY })).toEqual(walkSetups(fresh(WHOLE_BODY)));
  expect(walkSetups(changed, new Map())).toEqual(walkSetups(fresh(changed), new Map()));
});
