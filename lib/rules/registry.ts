/** Every rule, sorted by id. A page fetches this list after it has started, since it brings the reader of claims with it. */

import type { AnyRule } from "./define/types.ts";
import { saysOtherwise } from "./rules/says-otherwise.ts";
import { typedNumberThatCouldBeLive } from "./rules/typed-number-that-could-be-live.ts";
import { STARTING_RULES } from "./starting-rules.ts";

export const RULES: readonly AnyRule[] = [...STARTING_RULES, saysOtherwise, typedNumberThatCouldBeLive].sort((a, b) =>
  a.id < b.id ? -1 : 1,
);

export const ruleById = (id: string): AnyRule | undefined => RULES.find((rule) => rule.id === id);
