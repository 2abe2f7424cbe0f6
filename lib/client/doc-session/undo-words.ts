/** What an undo or redo did, and what stood in its way, in one sentence for the person. */
import { plural } from "#lib/plan/format.ts";
import type { BlockedValue } from "../act-undo.ts";
import type { ValueWords } from "./description.ts";

export type UndoVerb = "Undone" | "Redone";

/** A value that was left as it is, and whose it is: a name to begin a sentence with; undefined where nobody can tell. */
export interface BlockedValueWords {
  readonly why: BlockedValue["why"];
  /** Undefined for what is nothing to speak of by itself. */
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

/** Undefined when nothing stood in the way. One value is named, rather one that somebody changed. */
export function notUndoneWords(what: UndoVerb, stood: readonly BlockedValueWords[]): string | undefined {
  const named = stood.filter(({ words }) => words !== undefined);
  const first = (["gone", "changed", "already"] as const).flatMap((w) => named.filter(({ why }) => why === w))[0];
  if (!first?.words) return stood.length > 0 ? `Not ${what.toLowerCase()}: it was changed since.` : undefined;
  if (first.why === "already")
    return `Nothing to ${what === "Undone" ? "undo" : "redo"}: ${isNow(first.words)} already.`;
  return `Not ${what.toLowerCase()}: ${sinceWords(first)}${andMore(named.length - 1)}.`;
}

function sinceWords({ words, who = "somebody" }: BlockedValueWords): string {
  if (!words) return "";
  if (words.did) return `${who} ${words.did.past} since`;
  return `${who} ${who.startsWith("You,") ? "have" : "has"} set ${words.name} to ${words.says} since`;
}

const isNow = ({ name, says }: ValueWords): string => `${name} is ${says}`;

const andMore = (rest: number): string => (rest <= 0 ? "" : `, and ${plural(rest, "more value")}`);
