/** Reads a plan's document into plan data with what its studio lends it, and says when that cannot be done. */
import type * as Y from "yjs";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import { orderedIds, readPlan } from "#lib/doc/read.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { CLOSE, type CloseName } from "#lib/protocol/close.ts";
import { fail, type Result } from "#server/base/result.ts";
import { planDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioContext } from "#server/studio-data/studio-context.ts";

export interface PlanReading {
  readonly plan: Plan;
  /** Items of the document that are of a kind this version does not know: they are kept there but are not in `plan`. */
  readonly unknownItems: number;
}

/** The plan that a document holds for this row's room. Writes nothing. */
export function planInDoc(app: Pick<Springline, "db">, row: PlanRow, doc: Y.Doc): PlanReading {
  const plan = readPlan(doc, studioContext(app.db, row.roomId));
  return { plan, unknownItems: orderedIds(doc).length - plan.items.length };
}

/**
 * Runs `fn` on the stored document. Everything in it happens in one step: nobody's edit can come in between.
 * Errors: those of `fn`, and 404, 409 or 503 when the document cannot be read just now.
 */
export function withPlan<T>(
  app: Pick<Springline, "db" | "rooms">,
  row: PlanRow,
  fn: (reading: PlanReading, doc: Y.Doc) => Result<T>,
): Result<T> {
  try {
    return app.rooms.withDoc(planDoc(row.id), (doc) => fn(planInDoc(app, row, doc), doc));
  } catch (error) {
    const reason = unavailableReason(error);
    if (reason === undefined) throw error;
    return unavailable(reason);
  }
}

function unavailable(reason: CloseName): Result<never> {
  const status = reason === "unknownDocument" ? 404 : reason === "newerDocument" ? 409 : 503;
  return fail(status, `document-${reason}`, CLOSE[reason].text);
}
