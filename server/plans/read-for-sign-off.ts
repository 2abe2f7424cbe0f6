/** Puts a plan in front of a lead and keeps what they saw: only what was read can be signed. */

import { newestEdition } from "#db/repos/edition-repo.ts";
import { newestReading, putReading } from "#db/repos/reading-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type FromFile, fromFile } from "#lib/doc/from-file.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { planChanges } from "#lib/plan-diff/plan-changes.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { ok, type Result } from "#server/result.ts";
import { studioContext } from "#server/rooms/studio-context.ts";
import type { Springline } from "#server/springline.ts";
import { assessed } from "./assess-plan.ts";
import { openPlan } from "./open-plan.ts";
import { withPlan } from "./plan-doc.ts";
import { type Blocker, signBlockers } from "./sign-blockers.ts";

export interface SignOffReading {
  /** SHA-256 (hex) of the canonical plan: what `sign` is given back. */
  readonly hash: string;
  readonly plan: Plan;
  readonly findings: readonly Finding[];
  readonly blockers: readonly Blocker[];
  /** What came with a file and is otherwise than the studio's own: the findings go by it. */
  readonly fromFile: readonly FromFile[];
  /** What is different from what this person read last, in sentences; left out when nothing is, or nothing was read. */
  readonly changedSince?: readonly string[];
  /** The number the next edition will have. */
  readonly nextEdition: number;
}

/** Errors: 401, 403, 404, 409 or 503 when the document cannot be read. */
export function readForSignOff(app: Springline, actor: Actor, id: string): Result<SignOffReading> {
  const opened = openPlan(app, actor, id, "plan.sign");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  return withPlan(app, row, (reading, doc) => {
    const found = assessed(reading);
    if (!found.ok) return found;
    const { plan, hash, findings } = found.value;
    const last = newestReading(app.db, id, person.id);
    inTransaction(app.db, () => putReading(app.db, { planId: id, userId: person.id, hash, plan, at: app.now() }));
    return ok({
      hash,
      plan,
      findings,
      blockers: signBlockers(app, row, person.id, found.value),
      fromFile: fromFile(doc, studioContext(app.db, row.roomId)),
      nextEdition: (newestEdition(app.db, id)?.number ?? 0) + 1,
      ...(last && last.hash !== hash ? { changedSince: planChanges(last.plan, plan) } : {}),
    });
  });
}
