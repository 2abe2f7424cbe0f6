/** Divides a line into clauses, by punctuation and by the words that join what is done. */
import type { Unit } from "./units.ts";

/** How a clause follows what stands before it. */
type Joint = "next" | "after" | "before" | "until";

export interface Clause {
  readonly units: readonly Unit[];
  readonly joint: Joint;
  /** Counted from 0. */
  readonly sentence: number;
}

const JOINTS: ReadonlyMap<string, Joint> = new Map([
  ...["then", "but", "because", "finally"].map((word) => [word, "next"] as const),
  ...["after", "once", "when"].map((word) => [word, "after"] as const),
  ...["until", "till"].map((word) => [word, "until"] as const),
  ["before", "before"] as const,
]);
const NO_JOINT_AFTER: ReadonlySet<string> = new Set(["as", "than", "like", "from", "same"]);
const NO_JOINT_BEFORE: ReadonlySet<string> = new Set(["more", "again", "last", "me"]);

export function clausesOf(units: readonly Unit[]): Clause[] {
  const clauses: Clause[] = [];
  let open: Unit[] = [];
  let joint: Joint = "next";
  let sentence = -1;
  const close = (next: Joint): void => {
    if (open.length > 0) clauses.push({ units: open, joint, sentence });
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
    close(found.joint);
    at = found.end - 1;
  }
  close("next");
  return clauses;
}

function jointAt(units: readonly Unit[], at: number): { readonly joint: Joint; readonly end: number } | null {
  const [unit, next, third] = [units[at], units[at + 1], units[at + 2]];
  if (!unit) return null;
  if (unit.word === "as" && next?.word === "soon" && third?.word === "as") return { joint: "after", end: at + 3 };
  const joint = JOINTS.get(unit.word);
  if (!joint || (unit.gap === 0 && NO_JOINT_AFTER.has(units[at - 1]?.word ?? ""))) return null;
  if (next?.gap === 0 && NO_JOINT_BEFORE.has(next.word)) return null;
  // "Before that" puts what follows before what was said; "after that" does not.
  if (
    next?.gap === 0 &&
    ["that", "this"].includes(next.word) &&
    (third === undefined || third.gap > 0 || joint !== "after")
  ) {
    const points = third === undefined || third.gap > 0 || !third.classes.includes("fill");
    if (points) return { joint: joint === "before" ? "after" : "next", end: at + 2 };
  }
  return { joint, end: at + 1 };
}
