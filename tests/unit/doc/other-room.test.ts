/** A plan taken to a room with other machines stays a valid plan file. */
import { expect, test } from "vitest";
import { createPlanDoc } from "#lib/doc/create.ts";
import { readPlan } from "#lib/doc/read.ts";
import { PLAN_FORMAT, type Plan } from "#lib/plan/schema.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";

test("limits on springs the room does not have are left out, the others stay", () => {
  const [id, move] = Object.entries(STARTER_MOVES).find(([, m]) => m.springs?.max?.light !== undefined) ?? [];
  if (!id || !move) throw new Error("no such move");
  const plan: Plan = {
    format: PLAN_FORMAT,
    title: "Elsewhere",
    lengthSeconds: 600,
    equipment: STARTER_EQUIPMENT,
    moves: {},
    items: [{ id: "one", kind: "move", move: id, side: "both", seconds: 60, springs: { light: 1 } }],
  };
  const doc = createPlanDoc(plan, { carry: false });
  const light = STARTER_EQUIPMENT.springs.filter((spring) => spring.id === "light");
  const read = readPlan(doc, { moves: STARTER_MOVES, equipment: { ...STARTER_EQUIPMENT, springs: light } });
  expect(parsePlan(read)).toMatchObject({ ok: true });
  expect(read.moves[id]?.springs?.max).toEqual({ light: move.springs?.max?.light });
});
