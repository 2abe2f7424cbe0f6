/** Makes a rule: checks its shape as it is loaded, freezes it, and puts a studio's limits over its own. */
import type { AnyRule, LimitedRule, LimitsSchema, Rule } from "./types.ts";

/** The source of a number that is a habit of the trade: nothing published was found. */
export const COMMON_PRACTICE = "common practice, no source";

/** Throws on an id that is not kebab-case and on claims that are missing, which the first test that loads the rule shows. */
export function defineRule<M extends string, L extends LimitsSchema>(rule: Rule<M, L>): AnyRule {
  if (!/^[a-z][a-z0-9-]*$/.test(rule.id))
    throw new Error(`Rule id "${rule.id}" is not kebab-case: use small letters, digits and hyphens.`);
  if ((rule.reads === "claims") !== (rule.claims !== undefined))
    throw new Error(`Rule "${rule.id}": "claims" is given exactly where "reads" is "claims".`);
  const defaults = rule.limits.parse({});
  const { limits, check, inChange, ...meta } = rule;
  const asItIs: LimitedRule = { limitsRead: true, check: (ctx) => check(ctx, defaults), inChange };
  return Object.freeze({
    ...meta,
    limits,
    within: (given) => {
      if (given === undefined || given === null) return asItIs;
      const read = limits.safeParse(given);
      const used = read.success ? read.data : defaults;
      return { limitsRead: read.success, check: (ctx) => check(ctx, used), inChange };
    },
  } satisfies AnyRule);
}
