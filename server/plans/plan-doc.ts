/** Reads the document of a plan, together with its studio data, as a plan. */
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
  /** Items of a kind that this version does not know: they stay in the document but are not in `plan`. */
  readonly unknownItems: number;
}

/** The plan in a document, with the studio data of this row's room. Writes nothing. */
function planInDoc(app: Pick<Springline, "db">, row: PlanRow, doc: Y.Doc): PlanReading {
  const plan = readPlan(doc, studioContext(app.db, row.roomId));
  return { plan, unknownItems: orderedIds(doc).length - plan.items.length };
}

/**
 * Runs `fn` on the stored document, synchronously: no edit can come in between. Errors: those of `fn`, and 404, 409 or 503
 * when the document cannot be read at the moment.
 */
export function withPlan<T>(
  app: Pick<Springline, "db" | "documents">,
  row: PlanRow,
  fn: (reading: PlanReading, doc: Y.Doc) => Result<T>,
): Result<T> {
  try {
    return app.documents.withDoc(planDoc(row.id), (doc) => fn(planInDoc(app, row, doc), doc));
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
