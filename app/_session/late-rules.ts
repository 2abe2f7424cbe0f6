/** Fetched after the page: all rules, with those that read what the words claim. */
import { loadLater } from "#lib/client/late.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { STARTING_RULES } from "#lib/rules/starting-rules.ts";

export const lateRules = loadLater(() => import("#lib/rules/registry.ts").then((module) => module.RULES));

/** The rules that this page can check with now. */
export const rulesHere = (): readonly AnyRule[] => lateRules.here ?? STARTING_RULES;
