/** Where a count of findings in the line over the plan leads: to the next of its level after the chosen item, then from the top again. */
import { slipKey } from "#app/_margin/show-slip.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";

/**
 * `last`: where the press before led to. While that is still chosen, the finding after it is next, so that a person comes
 * by every finding of one item, and by those of the whole class.
 */
export function nextFinding(snap: SessionSnapshot, level: FindingLevel, last: Finding | null): Finding | undefined {
  const place = new Map(snap.plan.items.map((item, i) => [item.id, i]));
  const at = (id: string | undefined) => (id === undefined ? -1 : (place.get(id) ?? -1));
  const ofLevel = snap.findings.filter((f) => f.level === level).toSorted((a, b) => at(a.items[0]) - at(b.items[0]));
  const stands = last !== null && (last.items[0] ?? null) === snap.selectedId;
  const index = stands ? ofLevel.findIndex((f) => slipKey(f) === slipKey(last)) : -1;
  if (index >= 0) return ofLevel[(index + 1) % ofLevel.length];
  const here = snap.selectedId === null ? -2 : at(snap.selectedId);
  return ofLevel.find((f) => at(f.items[0]) > here) ?? ofLevel[0];
}
