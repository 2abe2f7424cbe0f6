/** A house standard as it is typed: texts until it is kept, so that half a number stays while it is being written. Pure. */

import type { AnyRule } from "#lib/rules/define/types.ts";
import type { StandardLevel } from "#lib/rules/level-words.ts";
import { type Limit, limitsOf, numberText, readNumberLimit } from "#lib/rules/limits.ts";
import type { StudioStandard } from "#lib/rules/studio-standard.ts";

/** "own": as the rule has it. */
export type DraftLevel = StandardLevel | "own";
export type DraftValue = string | readonly string[] | boolean;

export interface StandardDraft {
  readonly level: DraftLevel;
  /** By limit name: a number's text, the chosen of a list, yes or no. */
  readonly values: Readonly<Record<string, DraftValue>>;
}

export function draftOf(rule: AnyRule, standard: StudioStandard | null): StandardDraft {
  const values = limitsOf(rule).flatMap((limit) => {
    const value = valueIn(limit, standard?.limits?.[limit.name]);
    return value === null ? [] : [[limit.name, value] as const];
  });
  return { level: standard?.level ?? "own", values: Object.fromEntries(values) };
}

/** The field of one limit as the rule has it; null for a limit no field can hold. */
export const usualValue = (limit: Limit): DraftValue | null => valueIn(limit, undefined);

/** A stored value that is of another kind than the limit counts as not stored. */
function valueIn(limit: Limit, stored: unknown): DraftValue | null {
  switch (limit.kind) {
    case "number":
      return numberText(limit, typeof stored === "number" ? stored : limit.usual);
    case "choices":
      return Array.isArray(stored) ? stored.map(String) : limit.usual;
    case "yes-no":
      return typeof stored === "boolean" ? stored : limit.usual;
    case "other":
      return null;
  }
}

export interface StandardRead {
  /** Null while a field holds what the rule cannot take. */
  readonly standard: StudioStandard | null;
  /** By limit name: one sentence. */
  readonly problems: Readonly<Record<string, string>>;
}

/** `kept` is what the house has: limits that no field can hold stay as they are. */
export function readStandardDraft(rule: AnyRule, draft: StandardDraft, kept: StudioStandard | null): StandardRead {
  const limits: Record<string, unknown> = {};
  const problems: Record<string, string> = {};
  for (const limit of limitsOf(rule)) {
    const typed = draft.values[limit.name];
    if (limit.kind === "number" && typeof typed === "string") {
      const read = readNumberLimit(limit, typed);
      if (!read.ok) problems[limit.name] = read.say;
      else if (read.value !== null) limits[limit.name] = read.value;
    } else {
      const value = limit.kind === "other" ? kept?.limits?.[limit.name] : typed;
      if (value !== undefined) limits[limit.name] = value;
    }
  }
  const whole = rule.limits.safeParse(limits);
  if (!whole.success && Object.keys(problems).length === 0) {
    for (const issue of whole.error.issues) problems[String(issue.path[0] ?? "")] = `${issue.message}.`;
  }
  if (Object.keys(problems).length > 0) return { standard: null, problems };
  const level = draft.level === "own" ? {} : { level: draft.level };
  return { standard: { ...level, limits }, problems };
}
