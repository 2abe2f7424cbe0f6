/** Turns what a rule found into what people read, in order. */
import { perValue } from "#lib/memo/per-value.ts";
import type { FindingLevel, PlanItem } from "#lib/plan/schema.ts";
import type { AnyRule, Finding, Found, RuleContext } from "./define/types.ts";
import { fillMessage } from "./fill-message.ts";
import type { RuleInUse } from "./studio-rules.ts";

/** Stands for a rule that threw, so that one defect never hides the other findings. */
export const RULE_CRASHED = "rule-crashed";

/** What several rules found in one item, or in the plan as a whole. */
export interface Batch {
  readonly findings: readonly Finding[];
  /** Ids of the rules that threw. */
  readonly broken: readonly string[];
}
export const NOTHING_FOUND: Batch = { findings: [], broken: [] };

/**
 * Runs rules over a context. With `about`, only findings about that item are kept: the others are found with their own
 * item.
 */
export function batchOf(rules: readonly RuleInUse[], ctx: RuleContext, about?: string): Batch {
  const findings: Finding[] = [];
  const broken: string[] = [];
  for (const used of rules) {
    try {
      for (const found of used.check(ctx)) {
        if (about !== undefined && found.items[0] !== about) continue;
        findings.push(toFinding(used, found, ctx.plan.items));
      }
    } catch {
      broken.push(used.rule.id);
    }
  }
  return findings.length + broken.length === 0 ? NOTHING_FOUND : { findings, broken };
}

/** Joins batches about the same item, in order. */
export function mergedBatch(batches: readonly Batch[]): Batch {
  const some = batches.filter((batch) => batch !== NOTHING_FOUND);
  if (some.length === 0) return NOTHING_FOUND;
  const findings = some.flatMap((batch) => batch.findings).sort(byLevelAndRule);
  return { findings, broken: some.flatMap((batch) => batch.broken) };
}

/** All findings of a plan, in the order that `PlanCheck` describes. A rule that threw anywhere contributes nothing. */
export function findingsInOrder(
  rules: readonly RuleInUse[],
  items: readonly PlanItem[],
  batches: readonly Batch[],
): Finding[] {
  const broken = new Set<string>();
  for (const batch of batches) for (const rule of batch.broken) broken.add(rule);
  const notices = rules.flatMap(({ rule, limitsRead }): Finding[] => {
    if (broken.has(rule.id)) return [notice(rule, "crashed", CRASHED)];
    return limitsRead ? [] : [notice(rule, "limits-not-read", LIMITS_NOT_READ)];
  });
  const place = placesOf(items);
  const lists: Finding[][] = Array.from({ length: items.length + 1 }, () => []);
  for (const { findings } of [...batches, { findings: notices }])
    for (const finding of findings) {
      const first = finding.items[0];
      if (!broken.has(finding.rule)) lists[first === undefined ? 0 : (place.get(first) ?? -1) + 1]?.push(finding);
    }
  return ([] as Finding[]).concat(...lists.map((list) => (isInOrder(list) ? list : list.sort(byLevelAndRule))));
}

/** Item id -> place in the plan. */
type Places = ReadonlyMap<string, number>;
const placesOf = perValue((items: readonly PlanItem[]): Places => new Map(items.map((item, i) => [item.id, i])));

const CRASHED =
  "failed on this plan, so what it looks for was not checked. Everything else was. Tell whoever runs the server.";
const LIMITS_NOT_READ =
  "has studio limits that cannot be read, so its own were used. Set them again in the studio standards.";

function notice(rule: AnyRule, message: string, words: string): Finding {
  return {
    rule: RULE_CRASHED,
    level: "info",
    items: [],
    message: `The check "${rule.title}" ${words}`,
    values: { rule: rule.id },
    key: `${RULE_CRASHED}:${message}:${rule.id}`,
  };
}

function toFinding({ rule, level }: RuleInUse, f: Found, all: readonly PlanItem[]): Finding {
  const items = inPlanOrder(f.items, all);
  return {
    rule: rule.id,
    level: levelOf(level ?? f.level ?? rule.level, f),
    items,
    message: fillMessage(rule.messages[f.message] ?? f.message, f.values),
    values: f.values,
    key: `${rule.id}:${f.message}:${[...items].sort().join(",")}${f.about === undefined ? "" : `:${f.about}`}`,
  };
}

/** Most findings are about one item, which needs no places. */
function inPlanOrder(ids: readonly string[], all: readonly PlanItem[]): string[] {
  if (ids.length < 2) return [...ids];
  const place = placesOf(all);
  return [...new Set(ids)].sort((a, b) => (place.get(a) ?? -1) - (place.get(b) ?? -1));
}

/** What is unsure is looked at by a person, so it never holds a plan up. */
const levelOf = (level: FindingLevel, { unsure }: Found): FindingLevel => (unsure && level === "must" ? "look" : level);

const LEVEL_ORDER: readonly FindingLevel[] = ["must", "look", "info"];
const byLevelAndRule = (a: Finding, b: Finding): number =>
  LEVEL_ORDER.indexOf(a.level) - LEVEL_ORDER.indexOf(b.level) || compareText(a.rule, b.rule);

const isInOrder = (list: readonly Finding[]): boolean =>
  list.every((finding, n) => n === 0 || byLevelAndRule(list[n - 1] ?? finding, finding) <= 0);

/** By code unit: a locale's order would differ from reader to reader. */
const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
