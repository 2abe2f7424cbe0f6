/** "Add a strong, no, sorry, a middle": what is said last holds. */
import type { ReadClause } from "./clauses.ts";
import type { Draft } from "./draft.ts";

const TAKEN_BACK: ReadonlySet<string> = new Set(["no", "sorry", "oops", "whoops", "wait", "correction", "actually"]);

const isTakingBack = ({ clause, acts }: ReadClause): boolean =>
  acts.length === 0 && clause.units.every(({ word }) => TAKEN_BACK.has(word));

/** The new words in the place of the old ones: "a middle" is then what goes on. */
function inPlaceOf(old: Draft, now: Draft): Draft | undefined {
  if (old.act !== now.act) return undefined;
  if (old.act !== "springs" || now.act !== "springs" || !("parts" in old) || !("parts" in now)) return now;
  return now.way === "now" ? { ...now, way: old.way } : now;
}

/** A clause after "no, sorry" takes the place of the last act before it. */
export function corrected(read: readonly ReadClause[]): ReadClause[] {
  const all = [...read];
  for (const [n, one] of all.entries()) {
    if (n === 0 || !isTakingBack(all[n - 1] as ReadClause)) continue;
    const at = all.findLastIndex(({ acts }, place) => place < n && acts.length > 0);
    const before = all[at];
    const [old, act] = [before?.acts.at(-1), one.acts[0]];
    const draft = old && act && inPlaceOf(old.draft, act.draft);
    if (!before || !act || !draft || before.clause.sentence !== one.clause.sentence) continue;
    all[at] = { ...before, acts: before.acts.slice(0, -1) };
    all[n] = { ...one, acts: [{ ...act, draft }, ...one.acts.slice(1)] };
  }
  return all;
}
