/** The sentences of rounds of reading and of what changed. Pure; times are worded by the page. */
import { agree, plural } from "#lib/plan/format.ts";
import type { ComparePoint, EarlierStep, MomentHead, RoundView } from "#lib/rounds/rounds.ts";

export const CHANGES = {
  label: "What changed",
  nothing: "compare with nothing",
  asList: "As a list",
  loading: "Comparing…",
  same: "Nothing has changed.",
  samePlates: "Nothing has changed on the plates.",
  besides: "The class as a whole",
  noText: "The plan could not be read then, so there is nothing to compare with.",
  was: "before",
  is: "now",
  read: "Mark as read",
  unread: "Mark as not read",
  keys: "Keys: N next, B before",
  keysToRead: "Keys: N next, B before, M read",
  keysAllRead: "All are read. Keys: N next, B before, M not read",
} as const;

/** "since I returned it, round 1". `me`: the id of who reads this. */
export function pointWords({ kind, byId, byName, round, edition }: ComparePoint, me: string): string {
  const who = byId === me ? "I" : byName;
  const inRound = round > 0 ? `, round ${round}` : "";
  switch (kind) {
    case "reading":
      return "since I last read it";
    case "offered":
      return `since ${who} offered it${inRound}`;
    case "returned":
      return `since ${who} returned it${inRound}`;
    case "taken-back":
      return `since ${who} took it back${inRound}`;
    case "withdrawn":
      return edition === null ? `since ${who} withdrew its edition` : `since edition ${edition} was withdrawn`;
    case "signed":
    case "edition":
      return `since edition ${edition ?? ""} was signed`;
  }
}

/** The same point as a place in time: "returned by Ines, round 1". */
export function atPointWords(point: ComparePoint): string {
  const inRound = point.round > 0 ? `, round ${point.round}` : "";
  switch (point.kind) {
    case "reading":
      return "as I last read it";
    case "offered":
      return `offered by ${point.byName}${inRound}`;
    case "returned":
      return `returned by ${point.byName}${inRound}`;
    case "taken-back":
      return `taken back by ${point.byName}${inRound}`;
    case "withdrawn":
      return `edition ${point.edition ?? ""} when it was withdrawn`;
    case "signed":
    case "edition":
      return `edition ${point.edition ?? ""}`;
  }
}

/** "12 of 14 changed plates read", "14 changed plates". `read`: null for who is not asked to read. */
export function changedCountWords(changed: number, read: number | null): string {
  if (changed === 0) return CHANGES.samePlates;
  if (read === null) return plural(changed, "changed plate");
  const one = read === 0 ? "The one changed plate is not read yet" : "The one changed plate is read";
  return agree(changed, one, `${read} of ${changed} changed plates read`);
}

export const removedWords = (count: number): string => agree(count, "one removed", `${count} removed`);

export const ROUNDS = {
  title: "Rounds of reading",
  none: "This plan has not been offered for reading yet.",
  loading: "Loading the rounds…",
  earlier: "Before rounds were kept",
  besides: "Editions from before rounds were kept",
  between: "Between two moments",
  from: "From",
  to: "To",
  now: "the plan now",
  foundThen: "Findings and threads then",
  noFindings: "The checks found nothing.",
  noThreads: "No threads.",
  textMissing: "The plan could not be read then.",
  mainPoints: "Main points",
  threadGone: "A thread that cannot be shown any more",
} as const;

const OUTCOMES = { returned: "returned with notes", signed: "signed off", "taken-back": "taken back" } as const;

/** "Round 2: returned with notes", "Round 3: being read by Ines". */
export function roundTitle({ number, outcome, readerName, edition, moments }: RoundView): string {
  const withdrawn = moments.some(({ kind }) => kind === "withdrawn") ? ", since withdrawn" : "";
  if (outcome === "signed" && edition !== null) return `Round ${number}: signed off as edition ${edition}${withdrawn}`;
  if (outcome !== null) return `Round ${number}: ${OUTCOMES[outcome]}`;
  return readerName === null
    ? `Round ${number}: offered, nobody reads it yet`
    : `Round ${number}: being read by ${readerName}`;
}

const STEPS: Readonly<Record<MomentHead["kind"], string>> = {
  offered: "Offered for reading by",
  returned: "Returned with notes by",
  signed: "Signed off by",
  withdrawn: "Edition withdrawn by",
  "taken-back": "Taken back by",
};
export const stepTakenWords = ({ kind, byName }: MomentHead): string => `${STEPS[kind]} ${byName}`;

const EARLIER: Readonly<Record<EarlierStep["kind"], MomentHead["kind"]>> = {
  "handed-in": "offered",
  "handed-back": "returned",
  "taken-back": "taken-back",
  "signed-off": "signed",
  withdrawn: "withdrawn",
};
export const earlierWords = ({ kind, byName }: EarlierStep): string => `${STEPS[EARLIER[kind]]} ${byName}`;

/** "2 must fix, 5 look again, 3 threads, one open". */
export function thenWords({ must, look, threads, openThreads }: MomentHead): string {
  const found = [must > 0 ? `${must} must fix` : "", look > 0 ? `${look} look again` : ""].filter(
    (words) => words !== "",
  );
  const findings = found.length > 0 ? found.join(", ") : "nothing to fix or look at again";
  if (threads === 0) return `${findings}, no threads`;
  const open = openThreads === 0 ? "all settled" : agree(openThreads, "one open", `${openThreads} open`);
  return `${findings}, ${plural(threads, "thread")}, ${open}`;
}

export const threadThenWords = (settled: boolean, comments: number): string =>
  `${settled ? "settled" : "open"}, ${plural(comments, "comment")}`;
