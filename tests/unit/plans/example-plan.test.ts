/** The example class: it passes every rule in the starting room, each person has one, and other rooms get the example's own. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { putMove } from "#db/repos/move-repo.ts";
import { insertRoom } from "#db/repos/room-repo.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { PLAN_FORMAT, type Plan } from "#lib/plan/schema.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { EXAMPLE_CLASS } from "#lib/starter/example-class.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";
import { deletePlan } from "#server/plans/delete-plan.ts";
import { makeExample } from "#server/plans/example-plan.ts";
import { exportPlan } from "#server/plans/export-plan.ts";
import { must, openStudio, outcome, type PlanStudio } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

const asFile: Plan = {
  format: PLAN_FORMAT,
  ...EXAMPLE_CLASS,
  equipment: STARTER_EQUIPMENT,
  moves: { ...STARTER_MOVES },
};

test("it is a whole plan without one thing to fix or look at again, and fills its slot", () => {
  expect(parsePlan(asFile).ok).toBe(true);
  expect(checkPlan(asFile).findings.filter(({ level }) => level !== "info")).toEqual([]);
});

test("everybody who writes gets one of their own, and the same one again until it is deleted", () => {
  const { marta, ines, petra, sam } = s.people;
  const { id } = must(makeExample(s.app, marta));
  expect(must(makeExample(s.app, marta)).id).toBe(id);
  expect(must(makeExample(s.app, ines)).id).not.toBe(id);
  must(deletePlan(s.app, marta, id));
  expect(must(makeExample(s.app, marta)).id).not.toBe(id);
  expect([outcome(makeExample(s.app, petra)), outcome(makeExample(s.app, sam))]).toEqual(["no-right", "no-right"]);
  expect(outcome(makeExample(s.app, null))).toBe("not-signed-in");
});

test("with the starting library and room it is the studio's; elsewhere it brings its own springs and moves", async () => {
  const { marta } = s.people;
  const brought = must(exportPlan(s.app, marta, must(makeExample(s.app, marta)).id));
  expect(checkPlan(brought).findings.filter(({ level }) => level === "must")).toEqual([]);
  expect(brought.equipment.name).toBe(STARTER_EQUIPMENT.name);
  for (const [id, move] of Object.entries(STARTER_MOVES)) putMove(s.db, id, move, 1);
  insertRoom(s.db, { id: "a-first", name: "A first", equipment: { ...STARTER_EQUIPMENT, name: "Ours" } });
  const own = must(exportPlan(s.app, s.people.ines, must(makeExample(s.app, s.people.ines)).id));
  expect(own.equipment.name).toBe("Ours");
});
