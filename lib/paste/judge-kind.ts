/** What a row is: a move, a pause, a heading, a repetition on the other side, or nothing to add. */

import { foldText } from "#lib/library/fold.ts";
import type { Answers, PasteAnswer, RowAnswer, RowKind } from "./answers.ts";
import type { DoubtChoice, PasteDoubt } from "./judged.ts";
import { bestScore } from "./match-move.ts";
import { KIND_SENTENCES, MOVE_SENTENCES } from "./paste-words.ts";
import type { Match, PasteContext, RowReading, Sign } from "./types.ts";

/** How the list as a whole is written: a habit that is rare in it means something, a common one does not. */
export interface ListHabits {
  /** Most rows give a time. */
  readonly timed: boolean;
  /** Most rows with a time, a side or springs are written in capitals, or all rows are. */
  readonly capitals: boolean;
}

export type KindJudged =
  | { readonly kind: RowKind; readonly move?: string; readonly notes: readonly string[] }
  | { readonly kind: null; readonly doubt: PasteDoubt }
  | { readonly kind: "skip"; readonly why: string };

export interface KindQuestion {
  readonly reading: RowReading;
  readonly answer: RowAnswer;
  readonly answers: Answers;
  readonly habits: ListHabits;
  readonly context: PasteContext;
  /** "Kneeling row, left" when the row before could be done on the other side. */
  readonly otherSide: string | null;
}

/** A similarity that a heading or a pause does not reach by chance. */
const LIKELY = 0.5;

export function habitsOf(rows: readonly RowReading[]): ListHabits {
  const work = rows.filter(hasSetup);
  const isLoud = (row: RowReading) => row.signs.includes("capitals");
  const loud = work.filter(isLoud).length;
  return {
    timed: rows.filter((row) => row.times.length > 0).length * 2 >= rows.length,
    capitals: (loud > 1 && loud * 2 > work.length) || (rows.length > 1 && rows.every(isLoud)),
  };
}

export function judgeKind(q: KindQuestion): KindJudged {
  const { reading, answer } = q;
  const said = answer.move ?? ownName(q);
  if (answer.kind && answer.kind !== "move") return { kind: answer.kind, notes: [] };
  if (said !== undefined) return { kind: "move", move: said, notes: [] };
  if (answer.kind === "move") return moveOrDoubt(q);
  const has = (sign: Sign) => reading.signs.includes(sign);
  const sure = reading.match.move !== undefined && !has("formula");
  if (has("too-long")) return doubt(KIND_SENTENCES.tooLong, []);
  if (has("formula")) return doubt(KIND_SENTENCES.formula, []);
  if (has("total") && !sure) return { kind: "skip", why: KIND_SENTENCES.total };
  if (has("repeat") && !sure) return repeatDoubt(q);
  const heads = has("heading") || (has("capitals") && !has("pause") && !q.habits.capitals);
  if (heads && !(sure && hasSetup(reading))) return headingOr(q, sure);
  if (has("pause") && !sure && bestScore(reading.match) < 0.75) return pauseJudged(reading);
  return moveOrDoubt(q);
}

function ownName({ reading, answers, context }: KindQuestion): string | undefined {
  const fold = foldText(reading.name);
  const move = Object.hasOwn(answers.names, fold) ? answers.names[fold] : undefined;
  return move !== undefined && Object.hasOwn(context.moves, move) ? move : undefined;
}

const hasSides = (r: RowReading): boolean => r.sides.length > 0;
const hasSprings = (r: RowReading): boolean => r.springs.unknown.length > 0 || Object.keys(r.springs.counts).length > 0;
const hasSetup = (r: RowReading): boolean => r.times.length > 0 || hasSides(r) || hasSprings(r);

function headingOr(q: KindQuestion, sure: boolean): KindJudged {
  const { reading } = q;
  if (!sure) return { kind: "heading", notes: headingNotes(reading) };
  const name = nameOf(q, reading.match.move);
  return doubt(KIND_SENTENCES.headingOrMove(reading.name), [HEADING, moveChoice(q, reading.match.move, name)]);
}

function headingNotes(reading: RowReading): string[] {
  const [time] = reading.times;
  return time ? [KIND_SENTENCES.headingTime(time.seconds)] : [];
}

function pauseJudged(reading: RowReading): KindJudged {
  return {
    kind: "pause",
    notes: hasSides(reading) || hasSprings(reading) ? [KIND_SENTENCES.pauseExtras] : [],
  };
}

function moveOrDoubt(q: KindQuestion): KindJudged {
  const { reading, habits } = q;
  const { match } = reading;
  if (match.move !== undefined) return { kind: "move", move: match.move, notes: matchNotes(q, match) };
  const best = bestScore(match);
  const bare = !hasSetup(reading) && reading.reps === undefined;
  const asked = q.answer.kind === "move";
  if (bare && !asked && habits.timed && best < LIKELY && (reading.name.match(/\p{L}/gu) ?? []).length > 2) {
    return { kind: "heading", notes: [KIND_SENTENCES.readAsHeading] };
  }
  return { kind: null, doubt: libraryDoubt(q) };
}

function matchNotes(q: KindQuestion, match: Match): string[] {
  const name = nameOf(q, match.move);
  if (match.how === "spelling") return [MOVE_SENTENCES.spelling(q.reading.name, name)];
  if (match.how === "part") return [MOVE_SENTENCES.part(q.reading.name, name)];
  return [];
}

const nameOf = (q: KindQuestion, id: string | undefined): string => (id && q.context.moves[id]?.name) || (id ?? "");

function libraryDoubt(q: KindQuestion): PasteDoubt {
  const { reading } = q;
  const least = reading.signs.includes("edge") ? LIKELY : 0;
  const floor = Math.max(least, bestScore(reading.match) - 0.35);
  const near = reading.match.near.filter((n) => n.complete || n.score >= floor);
  const moves = near.map((n) => moveChoice(q, n.move, nameOf(q, n.move)));
  const others =
    hasSides(reading) || hasSprings(reading) ? [] : [HEADING, ...(reading.times.length > 0 ? [PAUSE] : [])];
  return { about: "move", say: librarySentence(q, near), choices: [...moves, ...others] };
}

function librarySentence({ reading }: KindQuestion, near: Match["near"]): string {
  const [best = 0, second = 0] = near.map((n) => n.score).sort((a, b) => b - a);
  if (reading.name === "") return MOVE_SENTENCES.none;
  if (reading.signs.includes("edge")) {
    return MOVE_SENTENCES.opening(reading.name);
  }
  if (best < LIKELY) return MOVE_SENTENCES.unknown(reading.name);
  if (second > 0 && second >= best - 0.2) return MOVE_SENTENCES.several(reading.name);
  return MOVE_SENTENCES.similar(reading.name);
}

const HEADING: DoubtChoice = { label: "A heading", answer: { row: { kind: "heading" } } };
const PAUSE: DoubtChoice = { label: "A pause", answer: { row: { kind: "pause" } } };

const moveChoice = (q: KindQuestion, move: string | undefined, label: string): DoubtChoice => ({
  label,
  answer: moveAnswer(q.reading, move ?? ""),
});

/** The answer that a row is this move, as is every row with its name. */
export function moveAnswer(reading: RowReading, move: string): PasteAnswer {
  const name = foldText(reading.name);
  return name === "" ? { row: { kind: "move", move } } : { name: { name, move }, row: { kind: "move" } };
}

function repeatDoubt(q: KindQuestion): KindJudged {
  const choices = q.otherSide ? [{ label: q.otherSide, answer: { row: { kind: "other-side" as const } } }] : [];
  return doubt(KIND_SENTENCES.repeats, choices);
}

const doubt = (say: string, choices: readonly DoubtChoice[]): KindJudged => ({
  kind: null,
  doubt: { about: "kind", say, choices },
});
