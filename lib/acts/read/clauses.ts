/** Divides a line into clauses, by punctuation and by the words that join what is done. */
import type { Draft } from "./draft.ts";
import { bareClause } from "./lead-ins.ts";
import type { Unit } from "./units.ts";
import type { Unread } from "./unread.ts";

/** How a clause follows what stands before it. */
type Joint = "next" | "after" | "before" | "until" | "so" | "before-that";

export interface Clause {
  readonly units: readonly Unit[];
  readonly joint: Joint;
  /** Counted from 0. */
  readonly sentence: number;
}

export interface ReadAct {
  readonly draft: Draft;
  /** Characters of the line. */
  readonly from: number;
  readonly to: number;
  /** "If you like", "or", "later": it may be told, or may not. */
  readonly hedged: boolean;
}

export interface ReadClause {
  readonly clause: Clause;
  readonly acts: readonly ReadAct[];
  /** "First" said of the whole clause. */
  readonly first: boolean;
  /** A condition, and nothing that depends on it yet. */
  readonly open: boolean;
  readonly unread: readonly Unread[];
}

const JOINTS: ReadonlyMap<string, Joint> = new Map([
  ...["then", "but", "because", "finally"].map((word) => [word, "next"] as const),
  ...["after", "once", "when"].map((word) => [word, "after"] as const),
  ...["until", "till"].map((word) => [word, "until"] as const),
  ["before", "before"] as const,
  ["so", "so"] as const,
]);
const NO_JOINT_AFTER: ReadonlySet<string> = new Set(["as", "than", "like", "from", "same"]);
/** "Everything off but one." */
const LEFT_OUT_OF: ReadonlySet<string> = new Set(["off", "all", "everything", "nothing", "none"]);
const NO_JOINT_BEFORE: ReadonlySet<string> = new Set(["more", "again", "last", "me"]);

export function clausesOf(units: readonly Unit[]): Clause[] {
  const clauses: Clause[] = [];
  let open: Unit[] = [];
  let joint: Joint = "next";
  let sentence = -1;
  const close = (next: Joint): void => {
    if (open.length > 0) clauses.push({ units: bareClause(open), joint, sentence });
    open = [];
    joint = next;
  };
  for (let at = 0; at < units.length; at++) {
    const unit = units[at] as Unit;
    const found = jointAt(units, at);
    if (unit.gap > 0 && open.length > 0) close("next");
    if (unit.gap === 2) sentence++;
    if (!found) {
      open.push(unit);
      continue;
    }
    // "Middle on, carriage home before that."
    const isSaidOfIt = found.joint === "before-that" && unit.gap === 0 && (units[found.end]?.gap ?? 2) === 2;
    if (isSaidOfIt) joint = found.joint;
    close(isSaidOfIt ? "next" : found.joint);
    at = found.end - 1;
  }
  close("next");
  return joinedUp(clauses);
}

/** "Long spring, one, on", "soft springs, two, take off", "straps, off": what is done with a thing, said apart. */
function joinedUp(clauses: readonly Clause[]): Clause[] {
  const all: Clause[] = [];
  for (const clause of clauses) {
    const last = all.at(-1);
    const isTail = clause.joint === "next" && clause.units.every(({ word }) => TAIL.has(word));
    const isThing =
      last?.sentence === clause.sentence &&
      last.units.every(({ classes }) => THINGS.some((name) => classes.includes(name)));
    if (!last || !isTail || !isThing) all.push(clause);
    else
      all.splice(-1, 1, {
        ...last,
        units: [...last.units, ...clause.units.map((unit) => ({ ...unit, gap: 0 as const }))],
      });
  }
  return all;
}
const TAIL: ReadonlySet<string> = new Set(["on", "off", "out", "away", "take", "put", "down", "up", "in"]);
const THINGS: readonly string[] = ["amount", "strap", "handle"];

function jointAt(units: readonly Unit[], at: number): { readonly joint: Joint; readonly end: number } | null {
  const [unit, next, third] = [units[at], units[at + 1], units[at + 2]];
  if (!unit) return null;
  if (unit.word === "as" && next?.word === "soon" && third?.word === "as") return { joint: "after", end: at + 3 };
  // "One light off with the carriage home."
  const withCarriage = unit.word === "with" && contentAfter(units, at)?.classes.includes("carriage");
  // "Heavy off at home."
  const atHome = unit.word === "at" && unit.gap === 0 && at > 0 && next?.word === "home" && next.gap === 0;
  const joint = withCarriage || atHome ? "after" : JOINTS.get(unit.word);
  if (!joint || (unit.gap === 0 && NO_JOINT_AFTER.has(units[at - 1]?.word ?? ""))) return null;
  if (next?.gap === 0 && NO_JOINT_BEFORE.has(next.word)) return null;
  if (unit.word === "but" && unit.gap === 0 && LEFT_OUT_OF.has(units[at - 1]?.word ?? "")) return null;
  // "Before, carriage home"; "carriage home before".
  if (unit.word === "before" && (next === undefined || next.gap > 0)) return { joint: "before-that", end: at + 1 };
  const pointed = pointedAt(units, at + 1);
  // "Before that" puts what follows before what was said; "after that" does not.
  if (pointed !== null && joint !== "so") return { joint: joint === "before" ? "before-that" : "next", end: pointed };
  return { joint, end: at + 1 };
}

/** The end of "that", "any of this", "all of that", which point at what was said. */
function pointedAt(units: readonly Unit[], at: number): number | null {
  let end = at;
  while (units[end]?.gap === 0 && POINTING.has(units[end]?.word ?? "")) end++;
  const next = units[end];
  if (end === at || !POINTS.has(units[end - 1]?.word ?? "")) return null;
  return next === undefined || next.gap > 0 ? end : null;
}

const POINTS: ReadonlySet<string> = new Set(["that", "this", "it", "anything", "everything", "though"]);
const POINTING: ReadonlySet<string> = new Set([...POINTS, "all", "any", "of", "even"]);

const contentAfter = (units: readonly Unit[], at: number): Unit | undefined =>
  units.slice(at + 1, at + 4).find(({ classes }) => !classes.includes("fill"));
