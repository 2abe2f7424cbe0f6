/**
 * How long the cue track and the full check of a class of 60 items and 400 lines take: cold, every line and every length
 * new; after one key press, all objects new as a server reads them; after one change of time, which moves all that follows.
 * Beside it the mixed-integer solver HiGHS on the same spans (its optimum must be the same worth). Exit 1 when a target is
 * missed; ends with an exception when an optimum differs.
 */
import loadHighs from "highs";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { cueTrack, voiceProblems } from "#lib/cues/cue-track.ts";
import { oneVoice } from "#lib/cues/one-voice.ts";
import type { Spoken } from "#lib/cues/said-order.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { planSchema } from "#lib/plan/schema.ts";
import { Dice } from "#tests/support/dice.ts";
import { longClass } from "#tests/support/long-class.ts";
import { type Spread, spread, taken } from "./timing.ts";
import { voiceLp } from "./voice-lp.ts";

const ITEMS = 60;
const LINES = 400;
const COLD_TRACK_MS = 50;
const CHECK_P99_MS = 5;
let allMet = true;

function target(what: string, is: number, atMost: number): void {
  const met = is <= atMost;
  if (!met) allMet = false;
  console.log(`  target: ${what} at most ${atMost}; ${is.toFixed(2)}. ${met ? "met" : "missed"}.`);
}

const CONSONANTS = "bdfgklmnprstvz";
const VOWELS = "aeiou";
/** A word that has not been counted yet, of one to four syllables. */
const newWord = (dice: Dice): string =>
  Array.from({ length: 1 + dice.upTo(4) }, () => dice.one([...CONSONANTS]) + dice.one([...VOWELS])).join("") +
  dice.one([...CONSONANTS]);

const movesOf = (plan: Plan): MoveItem[] => plan.items.flatMap((item) => (item.kind === "move" ? [item] : []));

/** The class with a new word in every line, so that no cached answer fits. */
function newLines(plan: Plan, dice: Dice): Plan {
  const fresh = structuredClone(plan);
  for (const item of movesOf(fresh)) for (const line of item.script ?? []) line.text = `${line.text} ${newWord(dice)}`;
  return fresh;
}

/** One more letter in one line; everything else unchanged, but in new objects. */
function oneKeyMore(plan: Plan, dice: Dice): Plan {
  const fresh = structuredClone(plan);
  const line = dice.one(movesOf(fresh).flatMap((item) => item.script ?? []));
  line.text += dice.one([...CONSONANTS, ...VOWELS, " "]);
  return fresh;
}

function oneTimeChanged(plan: Plan, dice: Dice): Plan {
  const fresh = structuredClone(plan);
  const item = dice.one(movesOf(fresh));
  item.seconds = item.seconds >= 60 ? item.seconds - 5 : item.seconds + 5;
  return fresh;
}

/** The spread of `act` over plans that each derive from the one before. Making them is not measured. */
function over(rounds: number, change: (plan: Plan, dice: Dice) => Plan, act: (plan: Plan) => unknown): Spread {
  const dice = new Dice(5);
  let plan = longClass(ITEMS, LINES);
  const first = plan;
  for (let i = 0; i < rounds / 2; i++) {
    plan = change(change === newLines ? first : plan, dice);
    act(plan);
  }
  const ms = Array.from({ length: rounds }, () => {
    plan = change(change === newLines ? first : plan, dice);
    return taken(() => act(plan)).ms;
  });
  return spread(ms);
}

const CHANGES = [
  { what: "cold, every line new", change: newLines },
  { what: "after one key press", change: oneKeyMore },
  { what: "after one change of time", change: oneTimeChanged },
] as const;

function show(what: string, { p50, p99 }: Spread): void {
  console.log(`  ${what}: p50 ${p50.toFixed(2)} ms, p99 ${p99.toFixed(2)} ms`);
}

function tracks(): void {
  console.log(`cue track of ${ITEMS} items and ${LINES} lines`);
  const first = taken(() => cueTrack(longClass(ITEMS, LINES)));
  console.log(`  the very first of the process, nothing compiled yet: ${first.ms.toFixed(1)} ms`);
  for (const { what, change } of CHANGES) {
    const ms = over(200, change, cueTrack);
    show(what, ms);
    if (change === newLines) target("cold p99 ms", ms.p99, COLD_TRACK_MS);
  }
}

function checks(): void {
  console.log(
    "full check of the same class, the cue track in it, beside reading and validating the file by its schema",
  );
  for (const { what, change } of CHANGES) {
    const ms = over(300, change, checkPlan);
    show(what, ms);
    if (change === oneKeyMore) target("p99 ms after one key press", ms.p99, CHECK_P99_MS);
  }
  show(
    "validation of the file",
    over(300, oneKeyMore, (plan) => planSchema.safeParse(JSON.parse(JSON.stringify(plan)))),
  );
}

const worthOf = (lines: readonly Spoken[], said: readonly number[]): number =>
  said.reduce((sum, place) => sum + (lines[place]?.worth ?? 0), 0);

async function besideSolver(): Promise<void> {
  const highs = await loadHighs();
  const problems = voiceProblems(longClass(ITEMS, LINES)).flat();
  console.log(
    `which lines are said, ${problems.length} problems of its spans, beside HiGHS on the same as a mixed-integer program`,
  );
  const dice = new Dice(7);
  for (let warm = 0; warm < 20; warm++) cueTrack(newLines(longClass(ITEMS, LINES), dice));
  const pairs = problems.map((lines) => {
    const lp = voiceLp(lines);
    const own = taken(() => oneVoice(lines));
    const peer = taken(() => (lines.length === 0 ? null : highs.solve(lp, { output_flag: false, mip_rel_gap: 0 })));
    const best = peer.value === null ? 0 : Math.round(peer.value.ObjectiveValue);
    const worth = worthOf(lines, own.value.said);
    if (best !== worth) throw new Error(`${lines.length} lines: ${worth} is not ${best}`);
    return { own: own.ms, peer: peer.ms, aside: own.value.aside.length };
  });
  const sum = (of: (pair: (typeof pairs)[number]) => number): number => pairs.reduce((total, p) => total + of(p), 0);
  console.log(`  the same worth in all; in ${pairs.filter((p) => p.aside > 0).length} something is set aside`);
  console.log(`  own ${sum((p) => p.own).toFixed(1)} ms in all, HiGHS ${sum((p) => p.peer).toFixed(0)} ms in all`);
}

tracks();
checks();
await besideSolver();
process.exit(allMet ? 0 : 1);
