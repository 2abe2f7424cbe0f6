/**
 * What is lost when a line is not said. The numbers only rank lines (common practice, no source): set-up, start and safety
 * are given up last, and among the others losing one line is always better than losing two.
 */
import type { SpokenKind } from "./types.ts";

const WORTH: Readonly<Record<SpokenKind, number>> = {
  setup: 10_000,
  start: 10_000,
  safety: 10_000,
  "heads-up": 110,
  "count-in": 108,
  breath: 106,
  easier: 104,
  form: 102,
  focus: 101,
  harder: 100,
};

/** The loss of one line; losses add up. */
export const worthOfKind = (kind: SpokenKind): number => WORTH[kind];

/** The preferred order where windows leave a choice; equal kinds keep the author's order. */
export const SAID_FIRST: Readonly<Record<SpokenKind, number>> = {
  start: 0,
  breath: 1,
  easier: 2,
  form: 3,
  focus: 3,
  harder: 4,
  "heads-up": 5,
  "count-in": 6,
  setup: 7,
  safety: 7,
};
