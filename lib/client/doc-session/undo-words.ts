/** What an undo or redo did, and what it could not change, in words for the person. */
import { agree, plural } from "#lib/plan/format.ts";
import type { BlockedValue } from "../act-undo.ts";
import type { ValueWords } from "./description.ts";

export type UndoVerb = "Undone" | "Redone";

/** A value that undo left as it is. `who` set it: a name that can begin a sentence; undefined where nobody can tell. */
export interface BlockedValueWords {
  readonly why: BlockedValue["why"];
  /** Undefined where the value is not worth mentioning on its own. */
  readonly words: ValueWords | undefined;
  readonly who: string | undefined;
}

export function undoWords(
  what: UndoVerb,
  changed: readonly ValueWords[],
  stood: readonly BlockedValueWords[] = [],
): string {
  const [first] = changed;
  const not = notUndoneWords(what, stood);
  if (!first) return not ?? `${what}.`;
  const done = `${what}: ${first.name} is ${first.says}${andMore(changed.length - 1)}.`;
  return not === undefined ? done : `${done} ${not}`;
}

/**
 * Undefined when undo could change everything. Only one value is named; one that somebody changed comes before one that
 * already matches.
 */
export function notUndoneWords(what: UndoVerb, stood: readonly BlockedValueWords[]): string | undefined {
  const named = stood.filter(({ words }) => words !== undefined);
  const first = (["gone", "changed", "already"] as const).flatMap((w) => named.filter(({ why }) => why === w))[0];
  if (!first?.words)
    return stood.length > 0 ? `Not ${what.toLowerCase()}: it has been changed in the meantime.` : undefined;
  if (first.why === "already")
    return `Nothing to ${what === "Undone" ? "undo" : "redo"}: ${first.words.name} is already ${first.words.says}.`;
  const not = `Not ${what.toLowerCase()}: ${sinceWords(first)}.`;
  const rest = named.length - 1;
  if (rest <= 0) return not;
  return `${not} ${plural(rest, "more value")} ${agree(rest, "was", "were")} not ${what.toLowerCase()} either.`;
}

function sinceWords({ words, who = "somebody" }: BlockedValueWords): string {
  if (!words) return "";
  return `${who} ${words.did?.past ?? `set ${words.name} to ${words.says}`} in the meantime`;
}

const andMore = (rest: number): string => (rest <= 0 ? "" : `, and ${plural(rest, "more value")}`);
