/** The finding to go to when a count in the band is pressed: the next of its level after the chosen item, then around. */
import type { FindingLevel } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/types.ts";
import type { SessionSnapshot } from "./session-types.ts";

export function nextFinding(snap: SessionSnapshot, level: FindingLevel): Finding | undefined {
  const place = new Map(snap.plan.items.map((item, i) => [item.id, i]));
  const at = (id: string | undefined) => (id === undefined ? -1 : (place.get(id) ?? -1));
  const here = snap.selectedId === null ? -2 : at(snap.selectedId);
  const ofLevel = snap.findings.filter((f) => f.level === level).toSorted((a, b) => at(a.items[0]) - at(b.items[0]));
  return ofLevel.find((f) => at(f.items[0]) > here) ?? ofLevel[0];
}
