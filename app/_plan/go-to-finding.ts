/** Goes from finding to finding: the plate of its first item opens, else the panel of the class. */
import { showSlip } from "#app/_margin/show-slip.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { nextFinding, TO_DECIDE } from "./next-finding.ts";

/** Without a level: all that is to be decided on. */
export function findingWalk(session: PlanSession, show: (itemId: string | null) => void) {
  let last: Finding | null = null;
  return (level?: FindingLevel) => {
    const snap = session.getSnapshot();
    const found = nextFinding(snap, level ? [level] : TO_DECIDE, last);
    last = found ?? null;
    if (!found) return;
    show(found.items[0] ?? null);
    // The plate is drawn in the first frame; what it holds has its place in the second.
    requestAnimationFrame(() => requestAnimationFrame(() => showSlip(found, true)));
  };
}
