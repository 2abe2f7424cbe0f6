/** Turns what a rule found into what people read, in order. */
import { perValue } from "#lib/memo/per-value.ts";
import { tenth } from "#lib/numbers/round.ts";
import { clockTime } from "#lib/plan/format.ts";
import type { FindingLevel, PlanItem } from "#lib/plan/schema.ts";
import { type AnyRule, type Finding, type Found, Moment, type RuleContext } from "./define/types.ts";
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

/** The same on the clock of the check, which need not begin with the class. */
export interface OwnBatch {
  readonly findings: readonly (Finding | TimedFinding)[];
  readonly broken: readonly string[];
}
export const NOTHING_FOUND: OwnBatch = { findings: [], broken: [] };

/** A finding that names a moment of the class. */
class TimedFinding {
  private readonly used: RuleInUse;
  private readonly found: Found;
  private readonly all: readonly PlanItem[];

  constructor(used: RuleInUse, found: Found, all: readonly PlanItem[]) {
    this.used = used;
    this.found = found;
    this.all = all;
  }

  /** `origin`: when the clock of the check begins, in seconds of the class. */
  from(origin: number): Finding {
    const values = Object.entries(this.found.values).map(([name, value]) => [
      name,
      value instanceof Moment ? clockTime(tenth(origin + value.seconds)) : value,
    ]);
    return toFinding(this.used, { ...this.found, values: Object.fromEntries(values) }, this.all);
  }
}

/** Runs rules over a context whose clock begins with the class. */
export function batchOf(rules: readonly RuleInUse[], ctx: RuleContext): Batch {
  const { findings, broken } = ownBatchOf(rules, ctx);
  return { findings: findings.map((one) => fromOrigin(one, 0)), broken };
}

/**
 * Runs rules over a context. With `about`, only findings about that item are kept: the others are found with their own
 * item.
 */
export function ownBatchOf(rules: readonly RuleInUse[], ctx: RuleContext, about?: string): OwnBatch {
  const findings: (Finding | TimedFinding)[] = [];
  const broken: string[] = [];
  for (const used of rules) {
    try {
      for (const found of used.check(ctx)) {
        if (about !== undefined && found.items[0] !== about) continue;
        const isTimed = Object.values(found.values).some((value) => value instanceof Moment);
        findings.push((isTimed ? timedFinding : toFinding)(used, found, ctx.plan.items));
      }
    } catch {
      broken.push(used.rule.id);
    }
  }
  return findings.length + broken.length === 0 ? NOTHING_FOUND : { findings, broken };
}

const timedFinding = (used: RuleInUse, found: Found, all: readonly PlanItem[]): TimedFinding =>
  new TimedFinding(used, found, all);
const fromOrigin = (one: Finding | TimedFinding, origin: number): Finding =>
  one instanceof TimedFinding ? one.from(origin) : one;

export const namesMoments = ({ findings }: OwnBatch): boolean => findings.some((one) => one instanceof TimedFinding);

/** Joins batches about the same item, in order. `origin`: when their clock begins, in seconds of the class. */
export function mergedBatch(batches: readonly OwnBatch[], origin: number): Batch {
  const findings = batches.flatMap((batch) => batch.findings).map((one) => fromOrigin(one, origin));
  return { findings: findings.sort(byLevelAndRule), broken: batches.flatMap((batch) => batch.broken) };
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
