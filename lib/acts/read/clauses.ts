/** Divides a line into clauses, by punctuation and by the words that join what is done. */
import type { Unit } from "./units.ts";

/** How a clause follows what stands before it. */
export type Joint = "next" | "after" | "before" | "until";

export interface Clause {
  readonly units: readonly Unit[];
  readonly joint: Joint;
  /** Counted from 0. */
  readonly sentence: number;
  /** "Once you're there": says nothing of its own, so it is not put before what stands before it. */
}

const JOINTS: Readonly<Record<string, Joint>> = {
  ...{ then: "next", but: "next", because: "next", finally: "next" },
  ...{ after: "after", once: "after", when: "after", before: "before", until: "until", till: "until" },
};
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
  const joint = Object.hasOwn(JOINTS, unit.word) ? JOINTS[unit.word] : undefined;
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
