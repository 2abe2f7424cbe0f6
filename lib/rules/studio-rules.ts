/** The rules as a studio has set them: which are on, at which level, with which limits. */
import { own } from "#lib/plan/lookup.ts";
import type { FindingLevel, Standards } from "#lib/plan/schema.ts";
import type { ItemClaims } from "#lib/talk/claims/types.ts";
import type { AnyRule, LimitedRule, RuleReads } from "./define/types.ts";

export interface RuleInUse extends LimitedRule {
  readonly rule: AnyRule;
  /** The studio's level in place of the rule's own; undefined where it set none. */
  readonly level: FindingLevel | undefined;
}

export interface StudioRules {
  readonly rules: readonly RuleInUse[];
  /** By what they read, in the order of the list. */
  readonly reading: Readonly<Record<RuleReads, readonly RuleInUse[]>>;
  /** The readers of claims that the rules in use bring with them; empty where none of them reads claims. */
  readonly claims: readonly ItemClaims[];
}

export function studioRulesOf(rules: readonly AnyRule[], standards: Standards | undefined): StudioRules {
  const used = rules.flatMap((rule): RuleInUse[] => {
    const standard = own(standards, rule.id);
    const level = standard?.level;
    return level === "off" ? [] : [{ ...rule.within(standard?.limits), rule, level }];
  });
  const reading = (reads: RuleReads) => used.filter(({ rule }) => rule.reads === reads);
  const inChange = used.flatMap((one): RuleInUse[] => (one.inChange ? [{ ...one, check: one.inChange }] : []));
  return {
    rules: used,
    claims: [...new Set(reading("claims").flatMap(({ rule }) => rule.claims ?? []))],
    reading: {
      item: reading("item"),
      change: [...reading("change"), ...inChange],
      voice: reading("voice"),
      claims: reading("claims"),
      times: reading("times"),
      setups: reading("setups"),
      kinds: reading("kinds"),
    },
  };
}
