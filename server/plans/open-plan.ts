/** Finds a plan and checks the asker's right. Every command on a plan goes through here. */
import { type PlanRow, readPlanRow } from "#db/repos/plan-repo.ts";
import { type Actor, canPlan, type Person, type PlanAction } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";

export interface OpenedPlan {
  readonly row: PlanRow;
  readonly person: Person;
}

/**
 * The plan, if `actor` may do `action` to it. Somebody who may not even read it gets 404, so that ids reveal nothing.
 * Errors: 401 not-signed-in, 403 no-right, 404 not-found (also for deleted plans).
 */
export function openPlan(
  app: Pick<Springline, "db">,
  actor: Actor,
  id: string,
  action: PlanAction,
): Result<OpenedPlan> {
  const found = openAnyPlan(app, actor, id, action);
  return found.ok && found.value.row.deletedAt !== null ? NOT_FOUND : found;
}

/** The same including deleted plans, to restore one. */
export function openAnyPlan(
  app: Pick<Springline, "db">,
  actor: Actor,
  id: string,
  action: PlanAction,
): Result<OpenedPlan> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind === "device") return NO_RIGHT;
  const row = readPlanRow(app.db, id);
  if (!row || !canPlan(actor, "plan.read", row)) return NOT_FOUND;
  return canPlan(actor, action, row) ? ok({ row, person: actor }) : NO_RIGHT;
}

/** For a route's `first`: checks the right to the plan in the path before the body is read. */
export const needsPlan =
  (action: PlanAction) =>
  ({ app, actor, params }: { app: Pick<Springline, "db">; actor: Person; params: { readonly id?: string } }) =>
    openPlan(app, actor, params.id ?? "", action);
