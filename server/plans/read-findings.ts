/** The server's own findings in a plan, for a page whose findings differ. */
import { FINDING_LEVELS } from "#lib/plan/schema.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { openPlan } from "./open-plan.ts";
import { UNCHECKED } from "./refusals.ts";

export interface ServerFindings {
  /** Fingerprints of the plan and of all its findings (`lib/analysis/marks.ts`). */
  readonly plan: string | null;
  readonly mark: string | null;
  readonly findings: readonly Finding[];
}

/** As many as a page can show, the most serious first: a plan with more must still open. */
const MOST_FINDINGS = 1_000;

/** As the plan stands on disk. Errors: 401, 403, 404, 503 unchecked. */
export async function readFindings(
  app: Pick<Springline, "db" | "checks">,
  actor: Actor,
  id: string,
): Promise<Result<ServerFindings>> {
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  const answer = await app.checks.now(id);
  if (!answer) return UNCHECKED;
  const { planMark: plan, findingsMark: mark, findings = [] } = answer;
  return ok({ plan, mark, findings: mostSerious(findings) });
}

function mostSerious(findings: readonly Finding[]): readonly Finding[] {
  if (findings.length <= MOST_FINDINGS) return findings;
  const sorted = findings.toSorted((a, b) => FINDING_LEVELS.indexOf(a.level) - FINDING_LEVELS.indexOf(b.level));
  return sorted.slice(0, MOST_FINDINGS);
}
