/** The sentences of offering, taking up and returning, fetched with what shows them. Pure. */
import { agree } from "#lib/plan/format.ts";

export const HAND_IN = {
  mustFix: "You can offer it for reading as it is, but it cannot be signed off until this is fixed:",
  nothing: "Nothing has to be fixed first.",
  nothingSoFar: "Nothing has to be fixed first, so far: whether the lines match the plan has not been checked yet.",
  unsaved: "Some of your changes are not saved on the server yet. A lead sees only what is saved.",
  note: "A note to the lead (optional)",
  done: "Offered for reading.",
} as const;

export const HAND_BACK = {
  note: "What should be changed",
  required: "Say what should be changed, so that the author knows what to do.",
  done: "Returned with notes.",
  mainPoints: "Main points (up to three, optional)",
  mainPointsHint: "What matters most. The author sees these first, at the head of the plan.",
  allTheSame: "Return it all the same",
} as const;

export const TAKE_BACK = {
  act: "Take back",
  title: "Take it back?",
  leave: "Leave it with them",
  ends: "This round of reading ends if you take it back. Whoever reads it is told; their comments stay.",
} as const;

/** Under the dialog of a step while the round that it was opened in is over. */
export const ROUND_OVER = {
  keep: "Your words are kept here for the next round.",
  again: (round: number): string =>
    `It is offered again as round ${round}. Close this, look at what has changed, then open it again: your words are kept.`,
} as const;

export const TAKE_UP = {
  act: "Take up the reading",
  letGo: "Let go of the reading",
  done: "You are reading this plan now. The other leads see it.",
  letGoDone: "Another lead can take up the reading now.",
  nobody: "No lead has taken up the reading yet.",
} as const;
export const takeOverWords = (name: string): string => `Take over from ${name}`;

/** Who gets the plan back, with how many open threads. */
export const handBackWords = (to: string | null, open: number): string =>
  `${to ?? "The author"} gets the plan back with your note${open === 0 ? "." : agree(open, " and the open thread.", ` and the ${open} open threads.`)}`;
