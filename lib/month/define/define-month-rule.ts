/** What a rule of the month is. Each is one file, and everything shown about it comes from that file. */
import * as z from "zod/mini";
import { MONTH_LIMIT_FIELDS, type MonthLimitName } from "../limits.ts";
import type { MonthClass } from "../sums-types.ts";
import type { MonthLevel, MonthLimits } from "../types.ts";
import type { MonthParts, PartKind } from "./parts.ts";

/** What a check returns. */
export interface MonthFound {
  /** The finding's id after the rule's name. */
  readonly about: string;
  /** In order of time. */
  readonly classes: readonly MonthClass[];
  /** Unrounded. */
  readonly values: Readonly<Record<string, unknown>>;
}

interface RuleWords {
  /** Names the problem; the same as the file's name. */
  readonly id: string;
  readonly title: string;
  /** The harm, in one or two sentences. */
  readonly why: string;
  /** What to do, in one sentence. */
  readonly fix: string;
  readonly level: MonthLevel;
  /** Where its numbers come from: a publication, or that there is none. */
  readonly source: string;
}

interface MonthRuleGiven<Of extends PartKind, F extends MonthFound> extends RuleWords {
  readonly of: Of;
  readonly limits: readonly MonthLimitName[];
  readonly check: (part: MonthParts[Of], limits: MonthLimits) => readonly F[];
  /** Short sentences with names: what is wrong with its numbers, then what to do. */
  readonly say: (found: F, part: MonthParts[Of], limits: MonthLimits) => string;
}

export interface MonthRule<Of extends PartKind = PartKind> extends Omit<MonthRuleGiven<Of, MonthFound>, "limits"> {
  /** The limits of the month that it looks at, as a page shows them. */
  readonly limits: z.ZodMiniObject<Record<string, z.ZodMiniType>>;
}

export type AnyMonthRule = { [Of in PartKind]: MonthRule<Of> }[PartKind];

/** `say` is only given what `check` of the same rule found. */
export function defineMonthRule<Of extends PartKind, F extends MonthFound>(
  given: MonthRuleGiven<Of, F>,
): MonthRule<Of> {
  const limits = z.strictObject(Object.fromEntries(given.limits.map((name) => [name, MONTH_LIMIT_FIELDS[name]])));
  return Object.freeze({ ...given, limits }) as unknown as MonthRule<Of>;
}

/** The source of a month's number that is a habit of the trade: nothing published was found. */
export const STUDIO_PRACTICE = "common practice, no source; the studio sets it";
/** The source of a rule that compares the month with itself and has no number of its own. */
export const OWN_FACTS = "the month's own entries; nothing is assumed";
