/**
 * A first library of moves under plain anatomical and gym names, for a studio to change as it likes. Set-ups,
 * loads and cautions are common practice, no source, and no advice: the machine maker's manual, local rules, a person's
 * own clinician and a licensed professional come first.
 *
 * The machine: springs pull the carriage home to the front; the cables of the handles come from the back.
 */
import type { Move } from "#lib/plan/schema.ts";
import { BRIDGES } from "./moves/bridges.ts";
import { LEGS } from "./moves/legs.ts";
import { PLANKS } from "./moves/planks.ts";
import { PULLS } from "./moves/pulls.ts";
import { PUSHES } from "./moves/pushes.ts";
import { SIDES_AND_TRUNK } from "./moves/sides-and-trunk.ts";

export const STARTER_MOVES: Readonly<Record<string, Move>> = {
  ...PLANKS,
  ...PUSHES,
  ...PULLS,
  ...LEGS,
  ...BRIDGES,
  ...SIDES_AND_TRUNK,
};
