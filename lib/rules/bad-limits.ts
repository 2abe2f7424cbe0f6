/** What is wrong with a studio's limits for a rule. */
import * as z from "zod/mini";
import { expectedWords, schemaAt } from "#lib/plan/expected.ts";
import type { Path, PlanProblem } from "#lib/plan/pointer.ts";
import type { AnyRule } from "./define/types.ts";
import { limitsOf } from "./limits.ts";

/** Limits that the rule does not have, or that are out of bounds. */
export function* badLimits(rule: AnyRule, limits: unknown): Iterable<PlanProblem> {
  for (const issue of rule.limits.safeParse(limits).error?.issues ?? []) {
    const inside = issue.path.map((step) => (typeof step === "symbol" ? "" : step));
    const at: Path = ["standards", rule.id, "limits", ...inside];
    if (issue.code === "unrecognized_keys") {
      const problem =
        inside.length > 0
          ? `should be one of: ${choiceNames(rule, inside)}`
          : `should be a limit of this rule: ${limitNames(rule)}`;
      yield { path: [...at, issue.keys[0] ?? ""], problem };
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

/** The choices that a limit has words for. */
function choiceNames(rule: AnyRule, [name]: Path): string {
  const limit = limitsOf(rule).find((one) => one.name === name);
  return limit?.kind === "words" ? limit.options.join(", ") : "what the rule's page shows";
}
