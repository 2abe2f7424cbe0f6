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
  /** What somebody had said or proposed about the plan by then. */
  readonly asked: SaidByThen;
  /** Null when the plan could not be read then. */
  readonly text: TextThen | null;
}

export interface SaidByThen {
  /** Items and rules that a thread or a proposal is about. */
  readonly items: ReadonlySet<string>;
  readonly rules: ReadonlySet<string>;
  /** What was said in no particular place: the note and main points of the return before, comments on the plan as a whole. */
  readonly words: readonly string[];
}

export interface TextThen {
  /** Names of moves, in small letters, by the item; "" for what is no move. */
  readonly items: ReadonlyMap<string, string>;
  /** What the checks went by besides the items, as one text: the studio's standards and the machines. */
  readonly ground: string;
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
 * What stood when a plan was returned, was gone when it was offered again though its items stand, and that nobody had said or
 * proposed anything about. What cannot be known is not claimed: nothing where a text is missing, where the studio's standards or
 * machines are others, or where words that name no move may have asked for anything. The newest first.
 */
export function fixedUnasked(texts: readonly RoundText[]): FixedUnasked[] {
  return texts
    .filter(({ kind }) => kind === "offered")
    .flatMap((again): FixedUnasked[] => {
      const before = texts.find(
        ({ planId, kind, round }) => planId === again.planId && kind === "returned" && round === again.round - 1,
      );
      const isAsked = before && askedOf(before, again);
      if (!isAsked) return [];
      const stands = new Set(again.findings.map(findingIdentity));
      const messages = before.findings
        .filter((finding) => asks(finding) && !stands.has(findingIdentity(finding)) && !isAsked(finding))
        .map(({ message }) => message);
      return messages.length === 0 ? [] : [{ planId: again.planId, round: again.round, at: again.at, messages }];
    })
    .sort((a, b) => b.at - a.at);
}

/** Whether a finding was asked for, or is gone with its items; null where that cannot be known of any. */
function askedOf(before: RoundText, again: RoundText): ((finding: Finding) => boolean) | null {
  const { text } = again;
  if (!before.text || !text || before.text.ground !== text.ground) return null;
  const { items: names } = before.text;
  const { items, rules, words } = again.asked;
  const said = words.map((one) => one.toLowerCase());
  const isNamed = (name: string | undefined): boolean => !!name && said.some((one) => one.includes(name));
  if (!said.every((one) => [...names.values()].some((name) => name !== "" && one.includes(name)))) return null;
  return (finding) =>
    rules.has(finding.rule) ||
    (finding.items.length === 0 && said.length > 0) ||
    finding.items.some((id) => items.has(id) || !text.items.has(id) || isNamed(names.get(id)));
}
