/**
 * Lines that stand twice in one script: two people took the same proposed lines at the same moment. Nothing is taken out by
 * itself, since somebody may be typing in either copy. Pure.
 */
import { moveItems } from "#lib/plan/lookup.ts";
import type { Plan, ScriptLine } from "#lib/plan/schema.ts";
import type { Remedy, RemedyChange } from "#lib/remedies/remedy.ts";

/** Takes one of each out, as one step; null where nothing stands twice. */
export function takeTwiceOut(plan: Plan): Remedy | null {
  const changes = moveItems(plan).flatMap(({ id, script = [] }) =>
    repeated(script).map((value): RemedyChange => ({ itemId: id, field: "lineTwice", value })),
  );
  return changes.length === 0 ? null : { label: "Take one of each out", changes };
}

/** Every line that the script has said before, in the same words. */
function repeated(script: readonly ScriptLine[]): ScriptLine[] {
  const seen = new Set<string>();
  return script.filter(({ kind, text }) => {
    const says = `${kind} ${text.trim()}`;
    if (text.trim() === "" || !seen.has(says)) {
      seen.add(says);
      return false;
    }
    return true;
  });
}
