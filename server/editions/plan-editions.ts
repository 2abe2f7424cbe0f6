/** The page of a plan's editions: every one of them with who signed it, what was accepted, and the classes taught from it. */
import { countLogsByEdition } from "#db/repos/class-log-repo.ts";
import { listEditions } from "#db/repos/edition-repo.ts";
import { readPlanRow } from "#db/repos/plan-repo.ts";
import { recordHead } from "#db/repos/record-repo.ts";
import { type Actor, can, canPlan } from "#lib/policy/can.ts";
import type { RecordHead } from "#lib/record/chain.ts";
import { NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { type AcceptedThere, acceptedIn, type EditionView, listPlanEditions, seesFindings } from "./editions.ts";
import { editionOrigin, type Origin } from "./origin.ts";

export interface ListedEdition extends EditionView {
  /** Empty for a reader who is shown no findings. */
  readonly accepted: readonly AcceptedThere[];
  /** How many classes were taught from it. */
  readonly classes: number;
}

export interface PlanEditions {
  /** As it was last signed. */
  readonly title: string;
  readonly editions: readonly ListedEdition[];
  readonly origin: Origin | null;
  /** Whether the reader may open the plan itself, and begin a new one. */
  readonly opens: boolean;
  readonly creates: boolean;
  readonly record: RecordHead;
}

/** Errors: 401, 403, 404 (also where nothing is signed). */
export function readPlanEditions(app: Springline, actor: Actor, planId: string): Result<PlanEditions> {
  const listed = listPlanEditions(app, actor, planId);
  if (!listed.ok) return listed;
  const row = readPlanRow(app.db, planId);
  const [newest] = listed.value.editions;
  if (!row || !newest) return NOT_FOUND;
  const shown = seesFindings(app, actor, planId);
  const accepted = new Map(listEditions(app.db, planId).map((head) => [head.number, acceptedIn(head)]));
  const taught = countLogsByEdition(app.db, planId);
  return ok({
    title: newest.title,
    editions: listed.value.editions.map((edition) => ({
      ...edition,
      accepted: (shown && accepted.get(edition.number)) || [],
      classes: taught.get(edition.number) ?? 0,
    })),
    origin: editionOrigin(app, actor, row.origin),
    opens: canPlan(actor, "plan.read", row),
    creates: can(actor, "plan.create"),
    record: recordHead(app.db),
  });
}
