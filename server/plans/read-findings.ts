/** What the server itself finds in a plan, for a page that found something else. */
import { FINDING_LEVELS } from "#lib/plan/schema.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { fail, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { openPlan } from "./open-plan.ts";

export interface ServerFindings {
  /** Names of what was read and of all that was found (lib/analysis/marks). */
  readonly plan: string | null;
  readonly mark: string | null;
  readonly findings: readonly Finding[];
}

/** As many as a page can make use of, the gravest first: a plan with more must still open. */
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
  if (!answer) return fail(503, "unchecked", "The plan cannot be checked just now. Try again in a moment.");
  const { planMark: plan, findingsMark: mark, findings = [] } = answer;
  return ok({ plan, mark, findings: gravest(findings) });
}

function gravest(findings: readonly Finding[]): readonly Finding[] {
  if (findings.length <= MOST_FINDINGS) return findings;
  const sorted = findings.toSorted((a, b) => FINDING_LEVELS.indexOf(a.level) - FINDING_LEVELS.indexOf(b.level));
  return sorted.slice(0, MOST_FINDINGS);
}
