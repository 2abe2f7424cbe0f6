/**
 * The labelled set-up talk of `tests/fixtures/told-acts`: its shapes, the plan that each case stands for, and what it means
 * that a told act covers a planned one. Nothing here reads a sentence.
 */
import { createHash } from "node:crypto";
import { type PlannedAct, plannedActs } from "#lib/acts/planned.ts";
import { type Equipment, type Move, type MoveItem, PLAN_FORMAT, type Plan, type ScriptLine } from "#lib/plan/schema.ts";
import { type Setup, setupOf } from "#lib/transitions/transitions.ts";
import changesFile from "#tests/fixtures/told-acts/changes.json" with { type: "json" };
import freshSetUpsFile from "#tests/fixtures/told-acts/fresh-set-ups.json" with { type: "json" };
import moreSetUpsFile from "#tests/fixtures/told-acts/more-set-ups.json" with { type: "json" };
import setUpsFile from "#tests/fixtures/told-acts/set-ups.json" with { type: "json" };

export type Verdict = "told" | "contradicted" | "not-planned" | "wrong-order" | "unsure";

/** An act as the plan file's format writes it; what a sentence does not say outright is left out. */
export interface ActWords {
  readonly act: string;
  readonly spring?: string;
  readonly count?: number;
  readonly facing?: string;
  readonly position?: string;
  readonly station?: string;
  readonly side?: string;
  readonly springs?: Readonly<Record<string, number>>;
}
export interface Label extends ActWords {
  readonly verdict: Verdict;
  /** Verdicts that are as right, where the format's meanings leave a choice. */
  readonly or?: readonly Verdict[];
  /** May be told by implication: right when it is found, right when it is not. */
  readonly optional?: boolean;
  /** Two careful people would differ: whatever is found here does not count. */
  readonly any?: boolean;
  /** The words that tell it. */
  readonly of: string;
}
export interface SetUpCase {
  readonly id: string;
  readonly change: string;
  readonly habit: string;
  readonly lines: readonly string[];
  readonly told: readonly Label[];
  /** Planned acts that nothing tells. */
  readonly missing: readonly ActWords[];
  /** Planned acts that are told wrongly or by implication only: they may be counted as missing or not. */
  readonly open: readonly ActWords[];
}
interface ChangeEnd {
  readonly move: string;
  readonly side: string;
  readonly springs: Readonly<Record<string, number>>;
  readonly facing?: string;
}
interface Change {
  readonly id: string;
  readonly equipment: string;
  readonly before: ChangeEnd;
  readonly after: ChangeEnd;
}

const FILE = changesFile as unknown as {
  readonly equipment: Readonly<Record<string, Equipment>>;
  readonly moves: Readonly<Record<string, Move>>;
  readonly changes: readonly Change[];
};
export const CHANGES: ReadonlyMap<string, Change> = new Map(FILE.changes.map((change) => [change.id, change]));
export const SET_UPS = [...setUpsFile, ...moreSetUpsFile, ...freshSetUpsFile] as unknown as readonly SetUpCase[];

/** Whether a case was written later to work with, and was never part of the split. */
export const isForWork = (id: string): boolean => id.startsWith("more-");

/** Which half a case belongs to, fixed by its id. */
export const halfOf = (id: string): "working" | "unseen" =>
  isForWork(id) || (createHash("sha256").update(`told-acts ${id}`).digest()[0] ?? 0) % 2 === 0 ? "working" : "unseen";

const FIRST = "before";
export const CHANGED = "after";

/** Two move items; the second has the case's lines as its set-up. */
export function planOfChange(id: string, lines: readonly string[] = []): Plan {
  const change = CHANGES.get(id);
  const equipment = FILE.equipment[change?.equipment ?? ""];
  if (!change || !equipment) throw new Error(`There is no change "${id}".`);
  const script = lines.map((text): ScriptLine => ({ kind: "setup", text }));
  const item = (itemId: string, end: ChangeEnd): MoveItem =>
    ({ id: itemId, kind: "move", seconds: 60, ...end, script: itemId === CHANGED ? script : [] }) as MoveItem;
  const items = [item(FIRST, change.before), item(CHANGED, change.after)];
  return { format: PLAN_FORMAT, title: id, lengthSeconds: 300, equipment, moves: { ...FILE.moves }, items };
}

export interface Ends {
  readonly planned: readonly PlannedAct[];
  readonly from: Setup;
  readonly to: Setup;
}

export function endsOf(change: string): Ends {
  const plan = planOfChange(change);
  const [before, after] = plan.items as [MoveItem, MoveItem];
  const [from, to] = [setupOf(plan, before), setupOf(plan, after)];
  if (!from || !to) throw new Error(`A move of change "${change}" is not known.`);
  return { planned: plannedActs(plan, before, after), from, to };
}

const OBJECTS = ["spring", "count", "facing", "position", "station", "side"] as const;

/** Whether what is said of the object agrees with `act`; what `said` leaves out agrees with anything. */
export const agrees = (said: ActWords, act: ActWords): boolean =>
  said.act === act.act &&
  OBJECTS.every((key) => said[key] === undefined || said[key] === act[key]) &&
  (said.springs === undefined || sameSprings(said.springs, act.springs ?? {}));

export function sameSprings(a: Readonly<Record<string, number>>, b: Readonly<Record<string, number>>): boolean {
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((id) => (a[id] ?? 0) === (b[id] ?? 0));
}

const SPRING_ACTS: readonly string[] = ["spring-on", "spring-off"];
export const isSpringAct = (act: string): boolean => SPRING_ACTS.includes(act);

/** Whether a told act covers a planned one; `springs-now` covers every spring when it names all that is on after. */
export function covers(said: ActWords, planned: PlannedAct, { to }: Ends): boolean {
  if (said.act === "springs-now")
    return isSpringAct(planned.act) && (said.springs === undefined || sameSprings(said.springs, to.springs));
  return agrees(said, planned);
}

/** Whether an act names something that is so after the change, planned or not. */
export function isSoAfter(said: ActWords, { to }: Ends): boolean {
  switch (said.act) {
    case "springs-now":
      return said.springs === undefined || sameSprings(said.springs, to.springs);
    case "turn":
      return said.facing === to.facing;
    case "position":
      return said.position === to.position;
    case "station":
      return said.station === to.station;
    case "side":
      return said.side === to.side;
    default:
      return false;
  }
}

/** The part of a set-up that an act is about. */
export function partOf({ act }: ActWords): string {
  if (isSpringAct(act) || act === "springs-now") return "springs";
  return act.split("-")[0] ?? act;
}
