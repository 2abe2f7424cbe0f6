/** What proposals say, all in one place. */
import { sentenceCase } from "#lib/plan/format.ts";
import { shareWords, type TakenInPart } from "#lib/proposal/part-words.ts";

/** "Taken", or "2 of 4 parts taken", and after the rest of the sentence which. `part`: null for all of it. */
const takenWords = (part: TakenInPart | null, rest: string): string =>
  part ? `${shareWords(part)} taken ${rest}: ${part.named.join(", ")}` : `taken ${rest}`;

export const PROPOSE = {
  title: (name: string) => `Propose a change: ${name}`,
  orderTitle: (block: string) => `Propose another order: ${block}`,
  firstBlock: "before the first heading",
  nothingChanges: "You change a copy. Nothing in the plan changes until its writers take it.",
  kept: "You began this proposal earlier in this browser.",
  again: "Start again from the plan",
  note: "Why (optional)",
  send: "Send the proposal",
  sending: "Sending…",
  sent: "The proposal is sent. It is on the plate until it is answered.",
  nothing: "Nothing is changed yet.",
  unknownField: (name: string) =>
    `A line has “{${name}}”, which is no live field. Write one that exists, or two braces for a brace.`,
  lines: "The script",
  addLine: "Add a line",
  kindOf: (n: number) => `Kind of line ${n}`,
  wordsOf: (n: number) => `Words of line ${n}`,
  up: (name: string) => `Move ${name} up`,
  down: (name: string) => `Move ${name} down`,
  remove: (n: number) => `Remove line ${n}`,
  line: (n: number) => `line ${n}`,
  outItem: "an item that was taken out",
  leftOut: "These no longer fit the plan, so they are not sent:",
  orderHint: "Alt + arrow up or down moves an item, or use its buttons.",
  itemGone: "This item was taken out of the plan. What you wrote stays in this browser until you start again.",
} as const;

export const TAKE = {
  label: (by: string) => `Proposal by ${by}`,
  heading: (by: string) => `${by} proposes`,
  all: "Take all",
  allThatFits: "Take all that fits",
  ticked: "Take the ticked",
  decline: "Decline…",
  declineWord: "Why not, in a word",
  declineVerb: "Decline",
  declineEmpty: "Say in a word why you decline it.",
  notNow: "Not now",
  withdraw: "Withdraw",
  withdrawn: "Your proposal is withdrawn.",
  declined: (by: string) => `Declined. ${by} is told, with your word.`,
  now: "Now",
  proposed: "Proposed",
  after: (text: string) => `after “${text}”`,
  first: "at the beginning",
  readOnly: "The plan’s writers can take it or decline it.",
  nothingFits: "Nothing of it fits the plan any more. Decline it, or ask for another.",
  notWritten:
    "The plan changed in the last moment, so that nothing you chose fits any more. Nothing was written. Look at the proposal again.",
  offline:
    "This page is not connected just now, so nothing was taken: somebody else may take it meanwhile. Try again when it is saved.",
  noWriting:
    "The plan cannot be written in at the moment. Nothing was changed: try again when it says that it is saved.",
  taken: (by: string, part: TakenInPart | null) =>
    `${sentenceCase(takenWords(part, `from ${by}`))}. Undo takes it back.`,
  sign: (by: string, when: string, part: TakenInPart | null) => takenWords(part, `from ${by}, ${when}`),
  undo: "Undo",
} as const;

export const EFFECT = {
  caption: "Effect on the class",
  before: "Now",
  after: "With it",
  change: "Change",
  gone: "No longer found",
  come: "Newly found",
  changed: "Still found, with other numbers",
  sameFindings: "The checks find the same as now.",
} as const;

export const LIST = {
  title: "Proposals",
  none: "No proposal waits for an answer.",
  go: "Go to the plate",
  answered: "Answered",
  taken: (by: string, when: string, part: TakenInPart | null) => takenWords(part, `by ${by}, ${when}`),
  declined: (by: string, when: string) => `declined by ${by}, ${when}`,
  withdrawn: (when: string) => `withdrawn, ${when}`,
  undone: "taken, then undone",
  gone: "an item that was taken out",
  loading: "Loading what was answered…",
} as const;
