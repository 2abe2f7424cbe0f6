/**
 * What the rounds of one person's plans say about their writing over time: which findings return from plan to plan, and
 * what they fixed without being asked. Pure; findings are as they stood at each moment.
 */
import type { Finding } from "#lib/rules/define/types.ts";
import { findingIdentity } from "#lib/rules/finding-identity.ts";

/** A plan as it was offered or returned in one round. */
export interface RoundText {
  readonly planId: string;
  readonly round: number;
  readonly kind: "offered" | "returned" | "signed";
  /** ms since the epoch. */
  readonly at: number;
  readonly findings: readonly Finding[];
  /** Items and rules that somebody had commented on by then. */
  readonly asked: { readonly items: ReadonlySet<string>; readonly rules: ReadonlySet<string> };
}

export interface ReturningFinding {
  readonly rule: string;
  /** Plans in which it stood when they were offered for the first time, the newest first. */
  readonly plans: readonly { readonly planId: string; readonly at: number; readonly count: number }[];
  /** How many plans were offered in all. */
  readonly of: number;
}

/** Only these levels ask for something. */
const asks = (finding: Finding): boolean => finding.level !== "info";

/** Rules that found something in at least two plans as they were first offered; those in most plans first. */
export function returningFindings(texts: readonly RoundText[]): ReturningFinding[] {
  const first = firstOffers(texts);
  const byRule = new Map<string, { planId: string; at: number; count: number }[]>();
  for (const { planId, at, findings } of first) {
    for (const [rule, count] of countByRule(findings)) {
      byRule.set(rule, [...(byRule.get(rule) ?? []), { planId, at, count }]);
    }
  }
  return [...byRule]
    .filter(([, plans]) => plans.length > 1)
    .map(([rule, plans]) => ({ rule, plans: plans.sort((a, b) => b.at - a.at), of: first.length }))
    .sort((a, b) => b.plans.length - a.plans.length || (a.rule < b.rule ? -1 : 1));
}

function firstOffers(texts: readonly RoundText[]): RoundText[] {
  const first = new Map<string, RoundText>();
  for (const text of texts) {
    if (text.kind !== "offered") continue;
    const known = first.get(text.planId);
    if (!known || text.round < known.round) first.set(text.planId, text);
  }
  return [...first.values()];
}

function countByRule(findings: readonly Finding[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { rule } of findings.filter(asks)) counts.set(rule, (counts.get(rule) ?? 0) + 1);
  return counts;
}

export interface FixedUnasked {
  readonly planId: string;
  /** The round in which it was offered again. */
  readonly round: number;
  readonly at: number;
  /** Sentences of the findings that were gone, in the order in which they stood. */
  readonly messages: readonly string[];
}

/**
 * What stood when a plan was returned, was gone when it was offered again, and that no comment was about: neither its rule
 * nor any of its items. The newest first.
 */
export function fixedUnasked(texts: readonly RoundText[]): FixedUnasked[] {
  return texts
    .filter(({ kind }) => kind === "offered")
    .flatMap((again): FixedUnasked[] => {
      const before = texts.find(
        ({ planId, kind, round }) => planId === again.planId && kind === "returned" && round === again.round - 1,
      );
      if (!before) return [];
      const stands = new Set(again.findings.map(findingIdentity));
      const messages = before.findings
        .filter((finding) => asks(finding) && !stands.has(findingIdentity(finding)) && !wasAsked(before, finding))
        .map(({ message }) => message);
      return messages.length === 0 ? [] : [{ planId: again.planId, round: again.round, at: again.at, messages }];
    })
    .sort((a, b) => b.at - a.at);
}

const wasAsked = ({ asked }: RoundText, { rule, items }: Finding): boolean =>
  asked.rules.has(rule) || items.some((id) => asked.items.has(id));
