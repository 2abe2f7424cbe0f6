/** Runs every rule over a plan. Pure and total: the same plan gives the same findings on the server and in the page. */
import { balance } from "#lib/balance/balance.ts";
import { classClock } from "#lib/clock/clock.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import { moveOf, own } from "#lib/plan/lookup.ts";
import type { FindingLevel, Plan, Standards } from "#lib/plan/schema.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import { fillMessage } from "./fill-message.ts";
import { RULES } from "./registry.ts";
import { trackOf } from "./select/said-lines.ts";
import type { AnyRule, Finding, Found, PlacedMove, RuleContext } from "./types.ts";

/** Not a rule: what a rule that broke becomes, so that one defect never hides the other findings. */
export const RULE_CRASHED = "rule-crashed";

export interface PlanCheck {
  /** Seconds the class takes, closing included. */
  readonly total: number;
  /** Seconds of its slot. */
  readonly length: number;
  /** In plan order (what is about the whole plan first), then by level, then by rule id; a rule's own order within that. */
  readonly findings: readonly Finding[];
  /** What is said when, as the rules looked at it; empty for times in which nothing can be placed. */
  readonly track: CueTrack;
}

/** Item id -> place in the plan. */
type Places = ReadonlyMap<string, number>;

/** Everything the rules find in a plan, with the plan's own house standards over the rules' defaults. */
export function checkPlan(plan: Plan, rules: readonly AnyRule[] = RULES): PlanCheck {
  const ctx = ruleContext(plan);
  const place: Places = new Map(plan.items.map((item, i) => [item.id, i]));
  const findings = rules.flatMap((rule) => runRule(rule, ctx, own(plan.standards, rule.id), place));
  return {
    total: ctx.total,
    length: plan.lengthSeconds,
    findings: findings.sort(findingOrder(place)),
    get track() {
      return trackOf(ctx);
    },
  };
}

/** The arithmetic the rules share. */
export function ruleContext(plan: Plan): RuleContext {
  const { rows, total } = classClock(plan);
  const moves = plan.items.flatMap((item, index): PlacedMove[] => {
    const row = rows[index];
    return item.kind === "move" && row ? [{ item, move: moveOf(plan, item), row, index }] : [];
  });
  return { plan, rows, total, moves, balance: balance(plan), steps: walkSetups(plan) };
}

function runRule(rule: AnyRule, ctx: RuleContext, standard: Standards[string] | undefined, place: Places): Finding[] {
  const house = standard?.level;
  if (house === "off") return [];
  try {
    const { found, limitsRead } = rule.run(ctx, standard?.limits);
    const findings = found.map((f) => toFinding(rule, f, house ?? f.level ?? rule.level, place));
    return limitsRead ? findings : [...findings, notice(rule, "limits-not-read", LIMITS_NOT_READ)];
  } catch {
    return [notice(rule, "crashed", CRASHED)];
  }
}

const CRASHED = "could not be worked out for this plan, so nothing is known about it; everything else was checked.";
const LIMITS_NOT_READ = "has house limits that cannot be read; its own limits were used instead.";

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

function toFinding(rule: AnyRule, f: Found, level: FindingLevel, place: Places): Finding {
  const items = [...new Set(f.items)].sort((a, b) => (place.get(a) ?? -1) - (place.get(b) ?? -1));
  return {
    rule: rule.id,
    level,
    items,
    message: fillMessage(rule.messages[f.message] ?? f.message, f.values),
    values: f.values,
    key: `${rule.id}:${f.message}:${[...items].sort().join(",")}${f.about === undefined ? "" : `:${f.about}`}`,
  };
}

const LEVEL_ORDER: readonly FindingLevel[] = ["must", "look", "info"];

function findingOrder(place: Places) {
  const first = (f: Finding): number => (f.items[0] === undefined ? -1 : (place.get(f.items[0]) ?? -1));
  return (a: Finding, b: Finding): number =>
    first(a) - first(b) || LEVEL_ORDER.indexOf(a.level) - LEVEL_ORDER.indexOf(b.level) || compareText(a.rule, b.rule);
}

/** By code unit: a locale's order would differ from one reader to the next. */
const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
