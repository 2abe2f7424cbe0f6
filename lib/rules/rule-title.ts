/** The titles of all rules, also of those that a page has not fetched yet: the server's findings may be theirs. */
import { own } from "#lib/plan/lookup.ts";
import { LATE_TITLES } from "./define/late-titles.ts";
import { STARTING_RULES } from "./starting-rules.ts";

/** Undefined for an id that no rule has. */
export const ruleTitle = (id: string): string | undefined =>
  STARTING_RULES.find((rule) => rule.id === id)?.title ?? own(LATE_TITLES, id);
