/** A studio standard as typed: texts until it is saved, so that half a number stays while it is being typed. Pure. */

import { sameData } from "#lib/plan/same-data.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import type { StandardLevel } from "#lib/rules/level-words.ts";
import {
  type Limit,
  type LimitUnits,
  limitsOf,
  numberText,
  readNumberLimit,
  readWordsLimit,
  wordsText,
} from "#lib/rules/limits.ts";
import { checkStandard, type StudioStandard } from "#lib/rules/studio-standard.ts";

/** "own": the rule's usual level. */
export type DraftLevel = StandardLevel | "own";
export type DraftValue = string | readonly string[] | boolean;

export interface StandardDraft {
  readonly level: DraftLevel;
  /** By limit name: a number's text, words as text, the chosen of a list, yes or no. */
  readonly values: Readonly<Record<string, DraftValue>>;
  /** Those that forces, lengths and masses are typed in. */
  readonly units: LimitUnits;
}

export function standardDraftOf(
  rule: Pick<AnyRule, "limits">,
  standard: StudioStandard | null,
  { force, length }: LimitUnits,
): StandardDraft {
  const units = { force, length };
  const values = limitsOf(rule).flatMap((limit) => {
    const value = valueIn(limit, standard?.limits?.[limit.name], units);
    return value === null ? [] : [[limit.name, value] as const];
  });
  return { level: standard?.level ?? "own", values: Object.fromEntries(values), units };
}

/** What the field of one limit holds at its usual value; null for a limit that no field can hold. */
export const usualValue = (limit: Limit, units: LimitUnits): DraftValue | null => valueIn(limit, undefined, units);

/** A stored value that is of another kind than the limit counts as not stored. */
function valueIn(limit: Limit, stored: unknown, units: LimitUnits): DraftValue | null {
  switch (limit.kind) {
    case "number":
      return numberText(limit, typeof stored === "number" ? stored : limit.usual, units);
    case "choices":
      return Array.isArray(stored) ? stored.map(String) : limit.usual;
    case "yes-no":
      return typeof stored === "boolean" ? stored : limit.usual;
    case "words":
      return wordsText(stored);
    case "other":
      return null;
  }
}

interface StandardRead {
  /** Null while a field holds something that the rule cannot use. */
  readonly standard: StudioStandard | null;
  /** By limit name: one sentence. */
  readonly problems: Readonly<Record<string, string>>;
}

/** `kept` is what the studio has set: limits that no field can hold, and numbers not typed anew, stay as they are. */
export function readStandardDraft(rule: AnyRule, draft: StandardDraft, kept: StudioStandard | null): StandardRead {
  const limits: Record<string, unknown> = {};
  const problems: Record<string, string> = {};
  for (const limit of limitsOf(rule)) {
    const typed = draft.values[limit.name];
    if (limit.kind === "number" && typeof typed === "string") {
      const read = readNumberLimit(limit, typed, draft.units, kept?.limits?.[limit.name]);
      if (!read.ok) problems[limit.name] = read.say;
      else if (read.value !== null) limits[limit.name] = read.value;
    } else if (limit.kind === "words" && typeof typed === "string") {
      const read = readWordsLimit(limit, typed);
      if (read.ok) limits[limit.name] = read.value;
      else problems[limit.name] = read.say;
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

/** As the server would store it: only what differs from the usual. Null for what it would refuse. */
export function differing(rule: AnyRule, typed: StudioStandard | null): StudioStandard | null {
  const checked = typed && checkStandard(rule, typed);
  return checked?.ok ? (checked.standard ?? {}) : null;
}

export const isAsKept = (rule: AnyRule, typed: StudioStandard, kept: StudioStandard | null): boolean =>
  sameData(differing(rule, typed), kept ?? {});

/** What a form of a rule says instead of saving the same once more. */
export const NOTHING_CHANGED = "Nothing was changed, so nothing was saved.";
