/**
 * What the script of each move tells of the change into it, held against the plan (plan file format, "Acts"). The rules
 * about what is told, the fix that completes a set-up and the command `acts` all stand on this one reading.
 */
import { Kept } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Move, MoveItem, Pause, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { announcedIn } from "#lib/talk/claims/announced.ts";
import type { Tellings } from "#lib/talk/telling.ts";
import { type SetupStep, walkSetups } from "#lib/transitions/walk.ts";
import { changesOf, judge } from "./judge.ts";
import type { Act, ActsChange, Judged, Verdict } from "./judged.ts";
import { signOf } from "./perhaps.ts";
import { actsInto, type PlannedAct } from "./planned.ts";
import { type AddedWords, amountStarts, type Lexicon, ownWords, saidSprings } from "./read/lexicon.ts";
import { type LineReading, readTelling } from "./read/reader.ts";
import { wordsOfName } from "./read/tokens.ts";
import { isWrongOrder, type Needed, summedUp, tooEarly } from "./together.ts";

interface ToldAct extends Act {
  /** Index in the item's script. */
  readonly line: number;
  /** Characters of the line's text. */
  readonly from: number;
  readonly to: number;
  readonly verdict: Verdict;
}

export interface ItemActs {
  readonly item: string;
  readonly planned: readonly PlannedAct[];
  readonly told: readonly ToldAct[];
  /** Planned acts that nothing tells, a pause before the move included. What is only perhaps told is not missing. */
  readonly missing: readonly PlannedAct[];
}

const NO_WORDS: AddedWords = {};
/** How long a set-up takes to tell does not matter to what it tells. */
const UNTIMED: Tellings = new Map();

/** One row for every move item, in order; `added` are the studio's own words. Nothing is planned for the first move, whose words are held against its set-up. */
export function planActs(plan: Plan, added: AddedWords = NO_WORDS): readonly ItemActs[] {
  const steps = new Map(walkSetups(plan, UNTIMED).map((step) => [step.item, step]));
  return plan.items.flatMap((item): ItemActs[] => {
    if (item.kind !== "move") return [];
    const step = steps.get(item);
    if (!step) return [{ item: item.id, planned: [], told: [], missing: [] }];
    return [changeTold(plan, step, added).row];
  });
}

/** An act as it is heard before a move. */
export interface HeardAct extends Judged {
  /** Index in the item's script; `IN_PAUSES` for the words of a pause before the move. */
  readonly line: number;
  readonly from: number;
  readonly to: number;
  /** The words that tell it. */
  readonly said: string;
  /** What has to be told before it and is told after; undefined where the order is right. */
  readonly early?: readonly Needed[];
}

export const IN_PAUSES = -1;

export interface ChangeTold {
  readonly change: ActsChange;
  readonly row: ItemActs;
  /** From the pauses before the move and from its set-up lines, in the order of the words. */
  readonly heard: readonly HeardAct[];
}

const keptTold = perValue((_: MoveItem | ScriptLine) => new Kept<ChangeTold>());
const keptRead = perValue((_: object) => new Kept<LineReading>());

/**
 * The change into one move, worked out once for as long as what it reads stays the same. It is kept with the first set-up
 * line, which outlives the item when another line is written in.
 */
export function changeTold(plan: Plan, step: SetupStep, added: AddedWords = NO_WORDS): ChangeTold {
  const { item, before, pauses } = step;
  const { springs, facing, side } = before?.item ?? {};
  const moves = [moveOf(plan, item), before && moveOf(plan, before.item)];
  const lines = setupLines(item);
  const reads: unknown[] = [plan.equipment, plan.moves, added, ...moves, springs, facing, side];
  reads.push(item.id, item.springs, item.facing, item.side, ...pauses.map(({ text }) => text));
  for (const { line, index } of lines) reads.push(line, index);
  return keptTold(lines[0]?.line ?? item).get(reads, () => readChange(plan, step, added));
}

function readChange(plan: Plan, step: SetupStep, added: AddedWords): ChangeTold {
  const { item, before, to, pauses } = step;
  const from = before?.setup ?? null;
  const change: ActsChange = { from, to, planned: actsInto(plan, from, to) };
  const lexicon = lexiconOf(plan, step, added);
  const lines = [
    ...pauses.map((pause) => ({
      text: pause.text ?? "",
      read: readText(pause, pause.text ?? "", lexicon),
      index: IN_PAUSES,
    })),
    ...setupLines(item).map(({ line, index }) => ({
      text: line.text,
      read: readText(line, line.text, lexicon),
      index,
    })),
  ];
  const heard = lines.map(({ read, text, index }) => heardIn(change, read, text, index));
  const left = from === null ? [] : untold(change, heard.flat());
  return toldOf(
    item.id,
    change,
    left.length === 0
      ? heard
      : heard.map((acts, n) => [...acts, ...perhapsIn(change, left, lines[n] as ReadLine, lexicon)]),
  );
}

interface ReadLine {
  readonly text: string;
  readonly read: LineReading;
  readonly index: number;
}

/** Planned acts that no reading tells; what is only named is not told by that. */
function untold(change: ActsChange, heard: readonly PlacedAct[]): readonly PlannedAct[] {
  const all = heard.map((one) => one.heard);
  const covered = new Set(all.flatMap(({ covers, vague }) => (vague ? [] : covers)));
  const kept = all.flatMap(({ of, verdict, act: { springs } }) =>
    of === undefined || verdict !== "contradicted"
      ? []
      : changesOf(of, change).filter((act) => !("spring" in act) || Object.hasOwn(springs ?? {}, act.spring)),
  );
  const otherwise = new Set(all.flatMap(({ act, verdict }) => (verdict === "contradicted" ? [act.act] : [])));
  return change.planned.filter((act) => !covered.has(act) && !kept.includes(act) && !otherwise.has(act.act));
}

/** What the unread words of a line tell of the acts that are left, each by the words that are surest. */
function perhapsIn(
  change: ActsChange,
  left: readonly PlannedAct[],
  { text, read, index }: ReadLine,
  { springs }: Lexicon,
): PlacedAct[] {
  return left.flatMap((act): PlacedAct[] => {
    const signs = read.unread.map((unread) => ({ unread, sign: signOf(act, unread, change, springs) }));
    const best = SUREST.flatMap((wanted) => signs.find(({ sign }) => sign === wanted) ?? [])[0];
    if (!best) return [];
    const { from, to } = best.unread;
    const verdict = best.sign === "unsure" ? "unsure" : "told";
    const told: Act = best.sign === "plain" ? { act: act.act } : act;
    const heard = { act: told, verdict, covers: [act], line: index, from, to, said: text.slice(from, to) } as const;
    return [{ heard, place: placeOf(best.unread, read) }];
  });
}

const SUREST = ["told", "plain", "unsure"] as const;

/** After the acts that stand before it in the line; before all of them where it is said to come first. */
function placeOf({ from, early }: LineReading["unread"][number], { inOrder }: LineReading): number {
  if (early) return -0.5;
  return inOrder.reduce((last, act, place) => (act.from < from ? Math.max(last, place) : last), -1) + 0.5;
}

interface PlacedLine {
  readonly line: ScriptLine;
  /** Among all lines of the item. */
  readonly index: number;
}

function setupLines({ script = [] }: MoveItem): PlacedLine[] {
  const lines: PlacedLine[] = [];
  for (const [index, line] of script.entries()) if (line.kind === "setup") lines.push({ line, index });
  return lines;
}

/** What a line of another kind tells, by the same reading. No order is read from it. */
export function toldIn(plan: Plan, step: SetupStep, line: ScriptLine): readonly HeardAct[] {
  const index = step.item.script?.indexOf(line) ?? 0;
  const { change } = changeTold(plan, step);
  return heardIn(change, readText(line, line.text, lexiconOf(plan, step, NO_WORDS)), line.text, index).map(
    ({ heard }) => heard,
  );
}

const wordsOfMove = perValue(({ name }: Move) => wordsOfName(name));
const namesOf = (moves: readonly (Move | undefined)[]): (readonly string[])[] =>
  moves.flatMap((move) => (move ? [wordsOfMove(move)] : [])).filter((words) => words.length > 1);

const namesOfMoves = perValue((moves: Plan["moves"]) => namesOf(Object.values(moves)));

function lexiconOf(plan: Plan, { item, before }: SetupStep, added: AddedWords): Lexicon {
  return {
    springs: saidSprings(plan.equipment),
    amountStarts: amountStarts(plan.equipment),
    moves: namesOf([moveOf(plan, item), before ? moveOf(plan, before.item) : undefined]),
    others: namesOfMoves(plan.moves),
    added: ownWords(added),
  };
}

/** The name of a move that a line announces tells no acts. */
const readText = (holder: ScriptLine | Pause, text: string, lexicon: Lexicon): LineReading =>
  keptRead(holder).get([lexicon.springs, lexicon.added, lexicon.others, ...lexicon.moves, text], () => {
    const read = readTelling(text, lexicon);
    const names = announcedIn(text);
    if (names.length === 0) return read;
    const isTold = ({ from, to }: { readonly from: number; readonly to: number }) =>
      !names.some((name) => from >= name.from && to <= name.to);
    return {
      acts: read.acts.filter(isTold),
      inOrder: read.inOrder.filter(isTold),
      unread: read.unread.filter(isTold),
    };
  });

/** An act with its place among all that is to be done. */
interface PlacedAct {
  readonly heard: HeardAct;
  readonly place: number;
}

function heardIn(change: ActsChange, read: LineReading, text: string, line: number): PlacedAct[] {
  const places = new Map(read.inOrder.map((one, place) => [one, place]));
  return read.acts.flatMap((one) => {
    const place = places.get(one) ?? 0;
    return judge(one.draft, change).map((judged): PlacedAct => {
      const { from, to, hedged } = one;
      const doubtful = hedged ? { verdict: "unsure" as const, doubted: true as const } : {};
      return { heard: { ...judged, ...doubtful, line, from, to, said: text.slice(from, to) }, place };
    });
  });
}

function toldOf(item: string, change: ActsChange, lines: readonly (readonly PlacedAct[])[]): ChangeTold {
  const placed = summedUp(change, lines);
  const early = change.from === null ? new Map<HeardAct, readonly Needed[]>() : tooEarly(placed);
  const all = placed.flat().map(({ heard: one }): HeardAct => {
    const needed = early.get(one);
    if (!needed) return one;
    return { ...one, early: needed, ...(isWrongOrder(one) ? { verdict: "wrong-order" as const } : {}) };
  });
  const heard = all.some(({ implied, vague }) => implied || vague) ? withoutEchoes(change, all) : all;
  const covered = new Set(heard.flatMap(({ covers }) => covers));
  // Nothing changes into the first move.
  const planned = change.from === null ? [] : change.planned;
  const missing = planned.filter((act) => !covered.has(act));
  return { change, heard, row: { item, planned, told: heard.flatMap(rowOf), missing } };
}

/** Without what is only implied or vague where the same is told. */
function withoutEchoes(change: ActsChange, all: readonly HeardAct[]): readonly HeardAct[] {
  const said = new Set(all.filter(({ implied }) => !implied).flatMap(({ covers }) => covers));
  const named = new Set(all.filter(({ vague }) => !vague).map(kindOf));
  // "Keep the handles, forearms down": what is kept is not put down by the way.
  const kept = new Set(
    all.flatMap(({ of, verdict }) => (of !== undefined && verdict === "contradicted" ? changesOf(of, change) : [])),
  );
  return all.filter((one) => {
    if (one.implied && one.covers.some((act) => kept.has(act))) return false;
    // "Springs: two light" tells no more than "two light".
    if (one.vague && !one.doubted && isHeld(one) && one.covers.some((act) => !said.has(act))) return true;
    if (one.vague) return !one.doubted && !named.has(kindOf(one));
    return !one.implied || one.covers.some((act) => !said.has(act));
  });
}

/** "Handle down, face the back, handle": the second may well be about taking it up. */
const isHeld = ({ act }: HeardAct): boolean => act.act.startsWith("handle") || act.act.startsWith("strap");

/** "spring", "handle", "strap", "turn". */
const kindOf = ({ act }: HeardAct): string => act.act.split("-")[0]?.replace(/s$/, "") ?? "";

const rowOf = ({ line, from, to, verdict, act }: HeardAct): ToldAct[] =>
  line < 0 ? [] : [{ ...act, line, from, to, verdict }];
