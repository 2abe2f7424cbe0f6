/** Every rule, by id. An explicit list: a bundler sees it, and so does a reviewer. */
import { totalLength } from "./rules/total-length.ts";
import type { AnyRule } from "./types.ts";

export const RULES: readonly AnyRule[] = [totalLength];

export const ruleById = (id: string): AnyRule | undefined => RULES.find((rule) => rule.id === id);
