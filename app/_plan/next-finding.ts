/** Where the next finding is: of one level, or of all that a person has to decide on, what must be fixed first. */
import { slipKey } from "#app/_margin/show-slip.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { acceptedNow } from "../_session/accepted-now.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";

/** To be decided on; what is for information waits for nobody. */
export const TO_DECIDE: readonly FindingLevel[] = ["must", "look"];

/**
 * The next after the chosen item, then from the top again. `last`: where the press before led to. While that is still chosen,
 * the finding after it is next, so that a person comes by every finding of one item, and by those of the whole class.
 */
export function nextFinding(
  snap: SessionSnapshot,
  levels: readonly FindingLevel[],
  last: Finding | null,
): Finding | undefined {
  const place = new Map(snap.plan.items.map((item, i) => [item.id, i]));
  const at = (id: string | undefined) => (id === undefined ? -1 : (place.get(id) ?? -1));
  const ofLevel = (level: FindingLevel) =>
    acceptedNow(snap)
      .waiting.filter((f) => f.level === level)
      .toSorted((a, b) => at(a.items[0]) - at(b.items[0]));
  const all = levels.flatMap(ofLevel);
  const stands = last !== null && (last.items[0] ?? null) === snap.selectedId;
  const index = stands ? all.findIndex((f) => slipKey(f) === slipKey(last)) : -1;
  if (index >= 0) return all[(index + 1) % all.length];
  const here = snap.selectedId === null ? -2 : at(snap.selectedId);
  const worst = all.filter((f) => f.level === all[0]?.level);
  return worst.find((f) => at(f.items[0]) > here) ?? all[0];
}
