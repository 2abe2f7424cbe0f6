/** A plan in writing as the floor could run it: made like a card and not signed, for a rehearsal by whoever may read it. */
import { newestEdition } from "#db/repos/edition-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { buildCard } from "#lib/card/build-card.ts";
import type { Card } from "#lib/card/schema.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import type { Actor } from "#lib/policy/can.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { whyNotAFile } from "./assess-plan.ts";
import { openPlan } from "./open-plan.ts";
import { withPlan } from "./plan-doc.ts";

const EMPTY = fail(409, "nothing-to-rehearse", "This plan has no move yet: there is nothing to rehearse.");

/**
 * The plan as it stands this moment, under the number its next edition would have. It carries no signature: no device
 * takes it, and no log of it is a class. Errors: those of `openPlan` and `withPlan`; 409 nothing-to-rehearse, not-a-file.
 */
export function draftCard(app: Springline, actor: Actor, id: string): Result<Card> {
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  const { row } = opened.value;
  return withPlan(app, row, (reading) => {
    const { plan } = reading;
    if (!plan.items.some(isMoveItem)) return EMPTY;
    const why = whyNotAFile(reading);
    if (why) return fail(409, "not-a-file", `This plan cannot be rehearsed just now: ${why.message}`, why);
    const studio = readStudio(app.db);
    const room = { id: row.roomId, name: readRoom(app.db, row.roomId)?.name ?? "a room that is gone" };
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
