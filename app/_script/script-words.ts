/** The sentences of the script editor, fetched with it. Pure. */

import type { HeardAct } from "#lib/acts/plan-acts.ts";
import type { StepState } from "#lib/acts/steps.ts";
import { beginWords, KIND_WORDS } from "#lib/plan/cue-words.ts";
import { agree, clockTime, plural } from "#lib/plan/format.ts";
import type { CueKind, LineBegin } from "#lib/plan/schema.ts";
import type { SetupOffer } from "./steps-view.ts";

/** Under the script: its keys, or what a reader can do. */
export const READER_HINT = "You can read this script but not edit it. Select words to comment on them.";
export const WRITER_HINT =
  "Enter: next line. { : a live field. Alt and 1 to 9: the line’s kind. Tab leaves the script.";

export const SELECT_WORDS_FIRST = "Select some words of the script first";
export const TOO_MANY_WORDS = "That is too much text for one comment. Select less, or comment on the item.";
export const WORDS_COMMENT = "Comment on these words";
export const WORDS_COMMENT_SENT = "Comment sent, pinned to these words.";

export const fieldListWords = (count: number): string =>
  `${plural(count, "live field")}. Arrow keys choose, Enter inserts, Escape keeps the brace.`;

export const pastedInPartWords = (leftOut: number): string =>
  `Pasted in part: the script is full, and ${plural(leftOut, "character")} did not fit.`;

/** The summary of what the library offers; `care`: a safety prompt is among it. */
export const stockWords = (count: number, care: boolean): string =>
  `${agree(count, "One line", `${count} lines`)} to add from the library${care ? ", safety prompts included" : ""}`;

export const lineAddedWords = (kind: CueKind): string => `${KIND_WORDS[kind]} line added at the end.`;

export const fieldTitle = (name: string): string => `{${name}}: filled in by the plan`;

/** The steps of the change into the item. */
export const STEPS_NAME = "Steps of the change";
/** Beside a step, for who does not see its mark. */
const STATE_WORDS: Readonly<Record<StepState, string>> = {
  told: "said",
  missing: "not said",
  "wrong-order": "said out of order",
  contradicted: "said otherwise",
  unsure: "perhaps said",
};
const quoted = (said: string): string => `“${said.trim()}”`;
/** Said otherwise needs the words that say so; what else is said is found by pressing the step. */
export const stepStateWords = (state: StepState, said: string | null): string =>
  state === "contradicted" && said !== null ? `${STATE_WORDS[state]}, ${quoted(said)}` : STATE_WORDS[state];
/** `isSaid`: other words of the set-up say it rightly. */
export const besidesWords = ({ verdict, said }: Pick<HeardAct, "verdict" | "said">, isSaid: boolean): string => {
  const how = isSaid ? "Said otherwise too" : "Said otherwise";
  return `${verdict === "not-planned" ? "Said, not planned" : how}: ${quoted(said)}`;
};
export const allSaidWords = (count: number): string =>
  agree(count, "The one step of the change is said", `All ${count} steps of the change said`);
/** The button that writes the set-up; `isFirst`: no set-up line is there yet; `isWhole`: the lines there have another order. */
export const writeSetUpWords = ({ isFirst, isWhole }: Pick<SetupOffer, "isFirst" | "isWhole">): string => {
  if (isFirst) return "Write the set-up line";
  return isWhole ? "Put the whole set-up first" : "Add what is missing to the set-up";
};

/** When a line begins. */
export const BEGIN = {
  title: "When this line begins",
  choice: "It begins",
  ways: { free: "when it comes", start: "after the work begins", end: "before the work ends" },
  seconds: "Seconds",
  set: "Set",
  ofSetup: "A set-up line is said during the change",
} as const;
export const beginsWords = (at: LineBegin | undefined): string => `Begins ${beginWords(at)}`;
/** Of the button at a line; `from` in seconds of the class, null where the line is not said. */
export const lineTimesWords = (at: LineBegin | undefined, from: number | null, talk: string): string =>
  [beginsWords(at), from !== null && `at ${clockTime(from)}`, talk && `${talk} to say`].filter(Boolean).join(", ");
export const beginSetWords = (at: LineBegin | undefined): string => `The line now begins ${beginWords(at)}.`;
