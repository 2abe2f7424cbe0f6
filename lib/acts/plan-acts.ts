/**
 * What the script of each move tells of the change into it, held against the plan (plan file format, "Acts"). The rules
 * about what is told, the fix that completes a set-up and the command `acts` all stand on this one reading.
 */
import { Kept } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Pause, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { type SetupStep, walkSetups } from "#lib/transitions/walk.ts";
import { judge } from "./judge.ts";
import type { Act, ActsChange, Judged, Verdict } from "./judged.ts";
import { actsInto, type PlannedAct } from "./planned.ts";
import { type Lexicon, springNames } from "./read/lexicon.ts";
import { type ReadLine, readLine } from "./read/reader.ts";
import { wordsOfName } from "./read/tokens.ts";
import { isWrongOrder, type Needed, summedUp, tooEarly } from "./together.ts";

export interface ToldAct extends Act {
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
  readonly missing: readonly PlannedAct[];
}

/** One row for every move item, in order. Nothing is planned for the first move, whose words are held against its set-up. */
export function planActs(plan: Plan): readonly ItemActs[] {
  const steps = new Map(walkSetups(plan).map((step) => [step.item, step]));
  return plan.items.flatMap((item): ItemActs[] => {
    if (item.kind !== "move") return [];
    const step = steps.get(item);
    if (!step) return [{ item: item.id, planned: [], told: [], missing: [] }];
    const { planned, heard, missing } = changeTold(plan, step);
    return [{ item: item.id, planned, told: heard.flatMap(rowOf), missing }];
  });
}

const rowOf = ({ line, from, to, verdict, act }: HeardAct): ToldAct[] =>
  line < 0 ? [] : [{ ...act, line, from, to, verdict }];

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
  readonly planned: readonly PlannedAct[];
  /** From the pauses before the move and from its set-up lines, in the order of the words. */
  readonly heard: readonly HeardAct[];
  /** Planned acts that nothing tells. What is only perhaps told is not missing. */
  readonly missing: readonly PlannedAct[];
}

const keptTold = perValue((_: MoveItem) => new Kept<ChangeTold>());
const keptRead = perValue((_: object) => new Kept<ReadLine>());
const keptChange = perValue((_: MoveItem) => new Kept<ActsChange>());

/** The change into one move, worked out once for as long as what it reads stays the same. */
export function changeTold(plan: Plan, step: SetupStep): ChangeTold {
  const { item, pauses } = step;
  const change = changeOf(plan, step);
  const reads = [
    change,
    plan.equipment,
    item.script,
    moveNames(plan, step).join("|"),
    ...pauses.map(({ text }) => text),
  ];
  return keptTold(item).get(reads, () => {
    const lexicon = lexiconOf(plan, step);
    const setup = (item.script ?? []).flatMap((line, index) => (line.kind === "setup" ? [{ line, index }] : []));
    return told(change, [
      ...pauses.map((pause) =>
        heardIn(change, readText(pause, pause.text ?? "", lexicon), pause.text ?? "", IN_PAUSES),
      ),
      ...setup.map(({ line, index }) => heardIn(change, readText(line, line.text, lexicon), line.text, index)),
    ]);
  });
}

/** What a line of another kind tells, by the same reading. No order is read from it. */
export function toldIn(plan: Plan, step: SetupStep, line: ScriptLine): readonly HeardAct[] {
  const index = step.item.script?.indexOf(line) ?? 0;
  return heardIn(changeOf(plan, step), readText(line, line.text, lexiconOf(plan, step)), line.text, index).map(
    ({ heard }) => heard,
  );
}

function changeOf(plan: Plan, { item, before, to }: SetupStep): ActsChange {
  const from = before?.setup ?? null;
  const { springs, station, position, facing, hands, feet, side } = to;
  const ends = [springs, station, position, facing, hands, feet, side, plan.equipment];
  const was = from
    ? [from.springs, from.station, from.position, from.facing, from.hands, from.feet, from.side]
    : [null];
  return keptChange(item).get([...ends, ...was], () => ({ from, to, planned: actsInto(plan, from, to) }));
}

const moveNames = (plan: Plan, { item, before }: SetupStep): string[] =>
  [moveOf(plan, item)?.name ?? "", before ? (moveOf(plan, before.item)?.name ?? "") : ""].filter((name) => name !== "");

function lexiconOf(plan: Plan, step: SetupStep): Lexicon {
  const moves = moveNames(plan, step).map(wordsOfName);
  return { springs: springNames(plan.equipment), moves: moves.filter((words) => words.length > 1) };
}

const readText = (holder: ScriptLine | Pause, text: string, lexicon: Lexicon): ReadLine =>
  keptRead(holder).get([lexicon.springs, lexicon.moves.join("|"), text], () => readLine(text, lexicon));

/** An act with its place among all that is to be done. */
interface PlacedAct {
  readonly heard: HeardAct;
  readonly place: number;
}

function heardIn(change: ActsChange, read: ReadLine, text: string, line: number): PlacedAct[] {
  return read.acts.flatMap((one) => {
    const place = read.inOrder.indexOf(one);
    return judge(one.draft, change).map((judged): PlacedAct => {
      const { from, to, hedged } = one;
      const doubtful =
        hedged && judged.verdict !== "unsure" ? { verdict: "unsure" as const, covers: judged.covers } : {};
      return { heard: { ...judged, ...doubtful, line, from, to, said: text.slice(from, to) }, place };
    });
  });
}

function told(change: ActsChange, lines: readonly (readonly PlacedAct[])[]): ChangeTold {
  const placed = summedUp(change, lines);
  const early = change.from === null ? new Map<HeardAct, readonly Needed[]>() : tooEarly(placed);
  const all = placed.flat().map(({ heard: one }): HeardAct => {
    const needed = early.get(one);
    if (!needed) return one;
    return { ...one, early: needed, ...(isWrongOrder(one) ? { verdict: "wrong-order" as const } : {}) };
  });
  const said = new Set(all.filter(({ implied }) => !implied).flatMap(({ covers }) => covers));
  const heard = all.filter(({ implied, covers }) => !implied || covers.some((act) => !said.has(act)));
  const covered = new Set(heard.flatMap(({ covers }) => covers));
  // Nothing changes into the first move.
  const planned = change.from === null ? [] : change.planned;
  return { planned, heard, missing: planned.filter((act) => !covered.has(act)) };
}
