/** Reads the document of a plan, together with its studio data, as a plan. */
import type * as Y from "yjs";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import { orderedIds, readPlan } from "#lib/doc/read.ts";
import { CLOSE, type CloseName } from "#lib/protocol/close.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import type { Assessment, PlanReading } from "#server/context/assessment.ts";
import { planDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioContext } from "#server/studio-data/studio-context.ts";
import { UNREADABLE_PLAN } from "./refusals.ts";

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

/**
 * The plan as it is now, its findings and hash, worked out on another thread. Errors: 404, 409 or 503 when the document
 * cannot be read, 409 not-a-file for a forged or damaged document that cannot be evaluated.
 */
export async function assessNow(
  app: Pick<Springline, "db" | "documents" | "checks">,
  row: PlanRow,
): Promise<Result<Assessment>> {
  const reading = withPlan(app, row, ok);
  if (!reading.ok) return reading;
  const found = await app.checks.assess(row.id, reading.value);
  return found ? ok(found) : UNREADABLE_PLAN;
}

function unavailable(reason: CloseName): Result<never> {
  const status = reason === "unknownDocument" ? 404 : reason === "newerDocument" ? 409 : 503;
  return fail(status, `document-${reason}`, CLOSE[reason].text);
}
