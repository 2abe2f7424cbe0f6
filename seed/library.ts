/**
 * The demo studio's library of moves, under plain anatomical and gym names. Set-ups, loads and cautions are what this
 * invented studio would write down; they are not advice. The machine maker's manual, local rules, a person's own
 * clinician and a licensed professional come first.
 *
 * The machine: springs draw the carriage home to the front; the cables of the handles come from the back.
 */
import type { Move } from "#lib/plan/schema.ts";
import { BRIDGES } from "./library/bridges.ts";
import { LEGS } from "./library/legs.ts";
import { PLANKS } from "./library/planks.ts";
import { PULLS } from "./library/pulls.ts";
import { PUSHES } from "./library/pushes.ts";
import { SIDES_AND_TRUNK } from "./library/sides-and-trunk.ts";

export const LIBRARY: Readonly<Record<string, Move>> = {
  ...PLANKS,
  ...PUSHES,
  ...PULLS,
  ...LEGS,
  ...BRIDGES,
  ...SIDES_AND_TRUNK,
};
