/** An unsigned card of a plan in writing, so that people who may read the plan can rehearse it. */
import { newestEdition } from "#db/repos/edition-repo.ts";
import { MISSING_ROOM, readRoom } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { buildCard } from "#lib/card/build-card.ts";
import type { Card } from "#lib/card/schema.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { whyNotAFile } from "./assess-plan.ts";
import { openPlan } from "./open-plan.ts";
import { withPlan } from "./plan-doc.ts";
import { cannotRehearse, NOTHING_TO_REHEARSE } from "./refusals.ts";

/**
 * The plan as it is now, with the number that its next edition would have. Without a signature no device accepts it, and no
 * log of it counts as a class. Errors: those of `openPlan` and `withPlan`; 409 nothing-to-rehearse, not-a-file.
 */
export function draftCard(app: Springline, actor: Actor, id: string): Result<Card> {
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  const { row } = opened.value;
  return withPlan(app, row, (reading) => {
    const { plan } = reading;
    if (!plan.items.some(isMoveItem)) return NOTHING_TO_REHEARSE;
    const why = whyNotAFile(reading);
    if (why) return cannotRehearse(why);
    const studio = readStudio(app.db);
    const room = { id: row.roomId, name: readRoom(app.db, row.roomId)?.name ?? MISSING_ROOM };
    const now = app.now();
    const made = {
      planId: id,
      number: (newestEdition(app.db, id)?.number ?? 0) + 1,
      room,
      plan,
      issuedAt: now,
      expiresAt: now,
    };
    return ok(buildCard({ ...made, studio: { name: studio?.name ?? "", town: studio?.town ?? "" } }));
  });
}
