/** The studio's level and limits of one rule of the month as typed, and the settings that they make. Pure. */
import { monthRuleById } from "#lib/month/check/registry.ts";
import type { AnyMonthRule } from "#lib/month/define/define-month-rule.ts";
import { sameData } from "#lib/plan/same-data.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import { type LimitUnits, limitsOf, readNumberLimit } from "#lib/rules/limits.ts";
import type { MonthSettings } from "#server/month-facts/month-settings.ts";
import { type DraftLevel, type StandardDraft, standardDraftOf } from "./standard-draft.ts";

export interface MonthRuleDraft extends StandardDraft {
  /** Of limits by muscle group: texts by limit, then by group; "" for the general one. */
  readonly byGroup: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

/** The limits of a rule that are said for single muscle groups, with what they are called. */
export const groupLimitsOf = (rule: Pick<AnyMonthRule, "limits">) =>
  limitsOf(rule).filter((limit) => limit.kind === "other");

export function monthRuleDraftOf(
  ruleId: string,
  { limits, standards }: MonthSettings,
  { force, length }: LimitUnits,
): MonthRuleDraft {
  const units = { force, length };
  const rule = monthRuleById(ruleId);
  if (!rule) return { level: "own", values: {}, byGroup: {}, units };
  const level: DraftLevel = standards[ruleId]?.level ?? "own";
  const byGroup = groupLimitsOf(rule).map(({ name }) => {
    const set = (limits as Readonly<Record<string, unknown>>)[name] as Readonly<Record<string, number>> | undefined;
    return [name, Object.fromEntries(GROUPS.map((group) => [group, set?.[group]?.toString() ?? ""]))] as const;
  });
  return {
    level,
    values: standardDraftOf(rule, { limits }, units).values,
    byGroup: Object.fromEntries(byGroup),
    units,
  };
}

interface DraftRead {
  /** Null while a field holds something that cannot be used. */
  readonly settings: MonthSettings | null;
  /** By limit, or by limit and group as "heavyBy/glutes": one sentence. */
  readonly problems: Readonly<Record<string, string>>;
}

/** The settings with this rule's level and limits; what equals the usual is left out. */
export function readMonthRuleDraft(ruleId: string, draft: MonthRuleDraft, settings: MonthSettings): DraftRead {
  const rule = monthRuleById(ruleId);
  if (!rule) return { settings: null, problems: {} };
  const problems: Record<string, string> = {};
  const typed: Record<string, unknown> = {};
  for (const limit of limitsOf(rule)) {
    if (limit.kind === "other") {
      typed[limit.name] = numbersByGroup(limit.name, draft.byGroup[limit.name] ?? {}, problems);
      continue;
    }
    const text = draft.values[limit.name];
    if (limit.kind !== "number" || typeof text !== "string") continue;
    const read = readNumberLimit(
      limit,
      text,
      draft.units,
      (settings.limits as Readonly<Record<string, unknown>>)[limit.name],
    );
    if (!read.ok) problems[limit.name] = read.say;
    else if (read.value !== null) typed[limit.name] = read.value;
  }
  if (Object.keys(problems).length > 0) return { settings: null, problems };
  const usual = rule.limits.parse({}) as Readonly<Record<string, unknown>>;
  const others = Object.entries(settings.limits).filter(([name]) => !(name in usual));
  const own = Object.entries(typed).filter(([name, value]) => !sameData(value, usual[name]));
  const { [ruleId]: _, ...standards } = settings.standards;
  const level = draft.level === "own" ? {} : { [ruleId]: { level: draft.level } };
  const limits = Object.fromEntries([...others, ...own]) as MonthSettings["limits"];
  return { settings: { ...settings, limits, standards: { ...standards, ...level } }, problems };
}

const MOST = 1e6;

function numbersByGroup(
  limit: string,
  texts: Readonly<Record<string, string>>,
  problems: Record<string, string>,
): Readonly<Record<string, number>> {
  const read = Object.entries(texts).flatMap(([group, text]) => {
    if (text.trim() === "") return [];
    const value = Number(text.trim().replace(",", "."));
    if (Number.isFinite(value) && value >= 0 && value <= MOST) return [[group, value] as const];
    problems[`${limit}/${group}`] = "Type a number from 0 on, or leave it empty.";
    return [];
  });
  return Object.fromEntries(read);
}
