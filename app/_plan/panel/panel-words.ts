/** What the panel says: labels of the fields of a class and of an item, and the sentences beside them. */
import { doTellWords, estimateWords } from "#app/_session/item-words.ts";
import type { ClockRow } from "#lib/clock/clock.ts";
import { clockTime, plainNumber, plural, secondsWords, sideWords, tagWords } from "#lib/plan/format.ts";
import type { Move, Plan, PlanItem } from "#lib/plan/schema.ts";
import { slowestFactor } from "#lib/transitions/slowest.ts";

export const CLASS_WORDS = {
  name: "The class",
  title: "Title",
  length: "Length, minutes",
  openingSeconds: "Opening",
  closingSeconds: "Closing",
  headsUpSeconds: "Heads-up before a change",
  countInSeconds: "Count-in",
  gridSeconds: "Times in steps of",
  people: "People changing at once",
  level: "Level",
  anyLevel: "any level",
  theme: "Theme",
  shares: "Least share of each muscle group",
  cautions: "Cautions to expect in this class",
  balance: "Left against right",
  notes: "Notes for the team",
  putBack: "Put back",
} as const;

export const ITEM_WORDS = {
  heading: "Name of this block",
  pause: "What the pause is for",
  seconds: "Seconds",
  lock: "Lock this time",
  shortest: "Shortest",
  longest: "Longest",
  side: "Side",
  springs: "Springs on",
  takeSpringOff: "Take off",
  setUp: "Set-up",
  facing: "Facing",
  offset: "Starting offset",
  change: "Time to change into it",
  script: "Script",
  drawer: "Load, set-up and place",
  otherMove: "Choose another move",
  keepMove: "Keep this move",
} as const;

export const MOVE_WORDS = {
  setUp: "Set-up",
  trains: "Trains",
  noMuscle: "no muscle named",
  tempo: "Tempo",
  easier: "Easier",
  harder: "Harder",
  page: "Everything about this move, and where it is used",
} as const;

/** "4:29 to 5:14 · left · 8 reps" */
export function timesWords(item: PlanItem, row: ClockRow): string {
  const at =
    item.kind === "heading" ? `at ${clockTime(row.start)}` : `${clockTime(row.start)} to ${clockTime(row.end)}`;
  const side = item.kind === "move" && item.side !== "both" && sideWords(item.side);
  return [at, side, row.reps !== null && plural(row.reps, "rep")].filter(Boolean).join(" · ");
}

/** Beside the time of a change: how long it takes to do and to tell, and what the first is made of. */
export function changeHint(plan: Plan, { transition }: ClockRow, isFirst: boolean): string {
  if (isFirst) return "The first move is set up during the opening. Leave it empty for no time of its own.";
  const { estimate, telling, actions } = transition;
  if (estimate === 0 && telling === 0) return "Nothing has to be changed or told. Leave it empty for 0 s.";
  const made = estimate > 0 ? ` To do: ${estimateWords(plan, actions)}.` : "";
  const both = `Leave it empty for ${secondsWords(Math.max(estimate, telling))}, the longer of the two.`;
  const one = `Leave it empty for ${secondsWords(Math.max(estimate, telling))}.`;
  return `${doTellWords(transition)}.${made} ${estimate > 0 && telling > 0 ? both : one}`;
}

/** Beside how many people change at once. */
export function peopleHint(plan: Pick<Plan, "people" | "equipment">): string {
  const factor = slowestFactor(plan);
  if (factor === 1) return "With more than one, the slowest of them sets each change.";
  return `The slowest of them sets each change: × ${factor.toFixed(2)}.`;
}

/** "2 “blue” on, but this machine has no such spring." */
export const strangeSpring = (id: string, count: number): string =>
  `${plural(count, `“${id}”`, `“${id}”`)} on, but this machine has no such spring.`;

/** "kneeling, carriage; hands on the straps, feet free" */
export const standWords = (move: Move): string =>
  `${tagWords(move.position)}, ${move.station}; hands ${held(move.hands)}, feet ${held(move.feet)}`;
const held = (place: string) => (place === "free" ? "free" : `on the ${tagWords(place)}`);

/** "out 2, hold 1, back 3 s; breathe out on the way out" */
export function tempoInShort({ tempo, exhaleOn }: Move): string {
  if ("holdSeconds" in tempo) return "held";
  const hold = (seconds: number | undefined) => (seconds ? `, hold ${plainNumber(seconds)}` : "");
  const out = `out ${plainNumber(tempo.outSeconds)}${hold(tempo.outHoldSeconds)}`;
  const back = `back ${plainNumber(tempo.backSeconds)}${hold(tempo.backHoldSeconds)} s`;
  return `${out}, ${back}${exhaleOn ? `; breathe out on the way ${exhaleOn}` : ""}`;
}
