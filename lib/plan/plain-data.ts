/** Checks that a value is plain JSON data of reasonable depth whose text can be stored. Runs before any schema. */
import { MAX_DEPTH } from "./json-text.ts";
import type { Path } from "./pointer.ts";

export interface Flaw {
  readonly path: Path;
  readonly problem: string;
}

/** Half of a surrogate pair. Such text has no UTF-8 form, so it can be neither stored nor hashed. */
const LONE_SURROGATE = /\p{Surrogate}/u;

/** More than any list or map of a plan needs; a sparse array may claim four thousand million entries. */
const MOST_INSIDE = 10_000;

interface Seat {
  readonly value: unknown;
  readonly path: LinkedPath | null;
  readonly depth: number;
}
interface LinkedPath {
  readonly up: LinkedPath | null;
  readonly step: string | number;
}

/**
 * The first thing in a value that is not plain data, or undefined. No recursion, so depth cannot exhaust the stack; a
 * cycle is caught as depth. `__proto__` is refused as a key: copying it would change what the copy inherits.
 */
export function findFlaw(root: unknown): Flaw | undefined {
  const seats: Seat[] = [{ value: root, path: null, depth: 0 }];
  for (let seat = seats.pop(); seat; seat = seats.pop()) {
    const { value, path, depth } = seat;
    const problem = ownProblem(value, depth);
    if (problem) return { path: unlink(path).slice(0, 6), problem };
    if (typeof value !== "object" || value === null) continue;
    const entries = Array.isArray(value) ? value.entries() : Object.entries(value);
    if (Array.isArray(entries) && entries.length > MOST_INSIDE)
      return { path: unlink(path), problem: "has too many keys" };
    const inside: Seat[] = [];
    for (const [step, child] of entries) {
      const place = { up: path, step };
      const flaw = typeof step === "string" ? keyProblem(step) : undefined;
      if (flaw) return { path: unlink(place), problem: flaw };
      inside.push({ value: child, path: place, depth: depth + 1 });
    }
    for (let i = inside.length - 1; i >= 0; i--) seats.push(inside[i] as Seat);
  }
  return undefined;
}

function ownProblem(value: unknown, depth: number): string | undefined {
  if (typeof value === "string")
    return LONE_SURROGATE.test(value) ? "should be text that can be written as UTF-8" : undefined;
  if (typeof value !== "object" || value === null) return undefined;
  if (depth >= MAX_DEPTH) return "is nested too deeply";
  if (Array.isArray(value)) return value.length > MOST_INSIDE ? "is too long a list" : undefined;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null ? undefined : "should be plain JSON data";
}

function keyProblem(key: string): string | undefined {
  if (key === "__proto__") return "is not a key of this format";
  return LONE_SURROGATE.test(key) ? "should be a key that can be written as UTF-8" : undefined;
}

function unlink(path: LinkedPath | null): (string | number)[] {
  const steps: (string | number)[] = [];
  for (let p = path; p; p = p.up) steps.push(p.step);
  return steps.reverse();
}
