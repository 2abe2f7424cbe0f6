/**
 * What the rows of a list become, given a person's answers so far: items, doubts in sentences, or nothing. A row with
 * an open doubt makes no item. Pure: the same reading and answers give the same result.
 */

import { foldedWords } from "#lib/library/fold.ts";
import { plural, sideWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Move } from "#lib/plan/schema.ts";
import { distinctiveWords, isDistinctive } from "../library/name-index.ts";
import type { Answers, RowAnswer } from "./answers.ts";
import { draftsOf } from "./drafts.ts";
import { habitsOf, judgeKind, type ListHabits } from "./judge-kind.ts";
import { judgeSide } from "./judge-side.ts";
import { judgeSprings } from "./judge-springs.ts";
import { judgeTime } from "./judge-time.ts";
import type { JudgedRow, PasteDoubt } from "./judged.ts";
import { KIND_SENTENCES, MOVE_SENTENCES } from "./paste-words.ts";
import type { PasteContext, RowReading } from "./types.ts";

/** Seconds of a pause whose row gives none (common practice, no source). */
const PAUSE_SECONDS = 30;

export function judgeRows(rows: readonly RowReading[], answers: Answers, context: PasteContext): JudgedRow[] {
  const habits = habitsOf(rows);
  let before: JudgedRow | undefined;
  return rows.map((reading) => {
    const judged = judgeRow({
      reading,
      answers,
      context,
      habits,
      before,
      answer: own(answers.rows, reading.key) ?? {},
    });
    if (judged.move !== undefined && judged.state !== "skipped") before = judged;
    return judged;
  });
}

interface Question {
  readonly reading: RowReading;
  readonly answer: RowAnswer;
  readonly answers: Answers;
  readonly context: PasteContext;
  readonly habits: ListHabits;
  /** The last move row before it that is not skipped. */
  readonly before: JudgedRow | undefined;
}

function judgeRow(q: Question): JudgedRow {
  const { reading, answer } = q;
  if (answer.skip) return { ...blank(reading), state: "skipped" };
  const judged = judgeKind({ ...q, otherSide: otherSideWords(q) });
  if (judged.kind === "skip") return { ...blank(reading), state: "skipped", notes: [judged.why] };
  if (judged.kind === null) return { ...blank(reading), state: "doubt", doubts: [judged.doubt] };
  if (judged.kind === "heading") return finished({ ...blank(reading), kind: "heading", notes: judged.notes }, q);
  if (judged.kind === "pause") return judgePause(q, judged.notes);
  if (judged.kind === "other-side") return judgeOtherSide(q);
  return judgeMove(q, judged.move ?? "", judged.notes);
}

const blank = (reading: RowReading): JudgedRow => ({
  reading,
  state: "ready",
  kind: null,
  times: 1,
  starting: { seconds: false, springs: false },
  words: "",
  keepWords: false,
  doubts: [],
  notes: [],
  drafts: [],
});

function finished(judged: JudgedRow, q: Question): JudgedRow {
  if (judged.doubts.length > 0) return { ...judged, state: "doubt" };
  return { ...judged, drafts: draftsOf(judged, q.context) };
}

function judgePause(q: Question, notes: readonly string[]): JudgedRow {
  const { reading, answer } = q;
  const time = judgeTime({ reading, answer, starting: PAUSE_SECONDS, least: 0, sides: [], side: undefined });
  return finished(
    {
      ...blank(reading),
      kind: "pause",
      ...(time.seconds === undefined ? {} : { seconds: time.seconds }),
      starting: { seconds: time.starting, springs: false },
      doubts: time.doubt ? [time.doubt] : [],
      notes: [...notes, ...time.notes],
    },
    q,
  );
}

function judgeMove(q: Question, id: string, notes: readonly string[]): JudgedRow {
  const { reading, answer, answers, context } = q;
  const move = own(context.moves, id);
  if (!move) return { ...blank(reading), state: "doubt", doubts: [goneDoubt(id)] };
  const sides = context.sidesOf(move);
  const side = judgeSide({ reading, answer, move, sides });
  const startingSeconds = context.startingSeconds(move);
  const time = judgeTime({ reading, answer, starting: startingSeconds, least: 1, move, sides, side: side.side });
  const timed = reading.times.length > 0 || answer.seconds !== undefined;
  const starting = context.startingSprings(move);
  const springs = judgeSprings({
    found: reading.springs,
    answer,
    answers,
    equipment: context.equipment,
    starting,
    timed,
  });
  const words = leftOver(reading, move);
  // "2 x 45 s" for a move with sides: one choice answers both time and side.
  const sideAnsweredByTime = time.doubt?.choices.some((c) => c.answer.row?.side !== undefined) ?? false;
  return finished(
    {
      ...blank(reading),
      kind: "move",
      move: id,
      ...(side.side === undefined ? {} : { side: side.side }),
      ...(time.seconds === undefined ? {} : { seconds: time.seconds }),
      ...(springs.springs === undefined ? {} : { springs: springs.springs }),
      times: Math.min(4, Math.max(1, answer.times ?? 1)),
      starting: { seconds: time.starting, springs: springs.starting },
      words,
      keepWords: answer.keepWords ?? (reading.wordsAreNotes && words === reading.words),
      doubts: [side.doubt && !sideAnsweredByTime ? side.doubt : [], time.doubt ?? [], springs.doubts].flat(),
      notes: [...notes, ...side.notes, ...time.notes, ...springs.notes],
    },
    q,
  );
}

const goneDoubt = (id: string): PasteDoubt => ({
  about: "move",
  say: MOVE_SENTENCES.removed(id),
  choices: [],
});

/** Words of the row that nothing was read from, including those of a name longer than the move's. */
function leftOver(reading: RowReading, move: Move): string {
  return [longerBy(reading.name, move.name), reading.words].filter((part) => part !== "").join(", ");
}

/** What a name says beyond the move's own name: "elbows close" in "Kneeling row elbows close". */
function longerBy(name: string, moveName: string): string {
  const known = new Set(distinctiveWords(moveName));
  const said = foldedWords(name).filter((word) => isDistinctive(word.fold));
  const extra = said.filter((word) => !known.has(word.fold));
  const all = [...known].every((word) => said.some((w) => w.fold === word));
  const [first, last] = [extra[0], extra.at(-1)];
  if (!all || !first || !last) return "";
  const between = said.filter((word) => word.from >= first.from && word.to <= last.to);
  if (between.length === extra.length) return name.slice(first.from, last.to);
  return extra.map((word) => name.slice(word.from, word.to)).join(" ");
}

type OneSided = JudgedRow & { readonly side: "left" | "right"; readonly move: string };
const isOneSided = (j: JudgedRow | undefined): j is OneSided =>
  j?.move !== undefined && (j.side === "left" || j.side === "right");

function otherSideWords({ before, context }: Question): string | null {
  if (!isOneSided(before)) return null;
  const name = own(context.moves, before.move)?.name ?? before.move;
  return `${name}, ${sideWords(before.side === "left" ? "right" : "left")}, like the row before`;
}

/** The row before, done on the other side; a time of its own wins. */
function judgeOtherSide(q: Question): JudgedRow {
  const { before, reading } = q;
  if (!isOneSided(before) || before.seconds === undefined || before.springs === undefined || before.state === "doubt") {
    const say = KIND_SENTENCES.notAfterOneSide;
    return { ...blank(reading), kind: null, state: "doubt", doubts: [{ about: "kind", say, choices: [] }] };
  }
  const side = before.side === "left" ? "right" : "left";
  const time = judgeTime({ reading, answer: q.answer, starting: before.seconds, least: 1, sides: [], side });
  const { move, springs } = before;
  const seconds = time.seconds === undefined ? {} : { seconds: time.seconds };
  const doubts = time.doubt ? [time.doubt] : [];
  return finished(
    { ...blank(reading), kind: "other-side", move, side, springs, ...seconds, doubts, notes: time.notes },
    q,
  );
}

/** "14 rows ready, 3 in doubt, 1 skipped". */
export function countsWords(rows: readonly JudgedRow[]): string {
  const count = (state: JudgedRow["state"]) => rows.filter((row) => row.state === state).length;
  const doubts = rows.reduce((sum, row) => sum + (row.state === "doubt" ? row.doubts.length : 0), 0);
  return [`${plural(count("ready"), "row")} ready`, plural(doubts, "doubt"), `${count("skipped")} skipped`].join(", ");
}
