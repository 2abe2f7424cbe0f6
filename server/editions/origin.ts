/** The edition that a plan was made from, for whoever may read that edition. */
import { readEditionText } from "#db/repos/edition-repo.ts";
import { readPlanRow } from "#db/repos/plan-repo.ts";
import { type Actor, canReadEditions } from "#lib/policy/can.ts";
import type { Springline } from "#server/context/springline.ts";

export interface Origin {
  readonly planId: string;
  readonly number: number;
  readonly title: string;
}

/** `origin`: "<plan id>/<number>", as the plan keeps it. */
export function editionOrigin(app: Pick<Springline, "db">, actor: Actor, origin: string | null): Origin | null {
  const [planId, text] = origin?.split("/") ?? [];
  const row = planId === undefined ? undefined : readPlanRow(app.db, planId);
  if (!row || row.deletedAt !== null || !canReadEditions(actor, row)) return null;
  const found = readEditionText(app.db, row.id, Number(text));
  return found ? { planId: row.id, number: found.number, title: found.title } : null;
}
