/** What is wrong with a studio's limits for a rule. */
import * as z from "zod/mini";
import { expectedWords, schemaAt } from "#lib/plan/expected.ts";
import type { Path, PlanProblem } from "#lib/plan/pointer.ts";
import type { AnyRule } from "./define/types.ts";

/** Limits that the rule does not have, or that are out of bounds. */
export function* badLimits(rule: AnyRule, limits: unknown): Iterable<PlanProblem> {
  for (const issue of rule.limits.safeParse(limits).error?.issues ?? []) {
    const inside = issue.path.map((step) => (typeof step === "symbol" ? "" : step));
    const at: Path = ["standards", rule.id, "limits", ...inside];
    if (issue.code === "unrecognized_keys") {
      yield { path: [...at, issue.keys[0] ?? ""], problem: `should be a limit of this rule: ${limitNames(rule)}` };
      continue;
    }
    const node = schemaAt(z.toJSONSchema(rule.limits, { io: "input" }), inside, limits);
    yield { path: at, problem: `should be ${node ? expectedWords(node) : "another value"}` };
  }
}

function limitNames(rule: AnyRule): string {
  const names = Object.keys(rule.limits.shape);
  return names.length > 0 ? names.join(", ") : "it has none";
}
