/** What a proposal does to the class: two analyses side by side, as numbers and findings. */
import type { PlanAnalysis } from "#lib/analysis/analysis.ts";
import { loadRows } from "#lib/load/load.ts";
import { tenth } from "#lib/numbers/round.ts";
import { tagWords } from "#lib/plan/format.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { findingIdentity } from "#lib/rules/finding-identity.ts";

export interface EffectNumber {
  readonly name: string;
  readonly before: number;
  readonly after: number;
  /** `clock`: seconds read as a time. `share`: 0..1. */
  readonly unit: "clock" | "seconds" | "share" | "newtons" | "joules";
}

export interface Effect {
  /** The length of the class, and whatever else differs. */
  readonly numbers: readonly EffectNumber[];
  readonly gone: readonly Finding[];
  readonly come: readonly Finding[];
  /** Found before and after, with other numbers: as they are after. */
  readonly changed: readonly Finding[];
}

/** Shares that differ by less are not told: half a hundredth. */
const LEAST_SHARE = 0.005;
/** Muscle groups at most, those that differ most. Our own choice. */
const MOST_GROUPS = 4;

/** `itemId`: whose load and talk are told apart; null where it is about an order. */
export function effectOf(before: PlanAnalysis, after: PlanAnalysis, itemId: string | null): Effect {
  const clock: EffectNumber = {
    name: "The class",
    before: before.clock.total,
    after: after.clock.total,
    unit: "clock",
  };
  const others = [
    ...sides(before, after),
    number("Changes", changeSeconds(before), changeSeconds(after), "seconds"),
    ...(itemId === null ? [] : [...load(before, after, itemId), talk(before, after, itemId)]),
    number("Talk in the class", before.classTalk.seconds, after.classTalk.seconds, "seconds"),
    ...shares(before, after),
  ];
  return { numbers: [clock, ...others.filter(differs)], ...findings(before.findings, after.findings) };
}

const number = (name: string, before: number, after: number, unit: EffectNumber["unit"]): EffectNumber => ({
  ...{ name, before, after, unit },
});

const differs = ({ before, after, unit }: EffectNumber): boolean =>
  unit === "share" ? Math.abs(before - after) >= LEAST_SHARE : tenth(before) !== tenth(after);

/** Seconds of work on each side; items of both sides or alternating count half and half. */
function sides(before: PlanAnalysis, after: PlanAnalysis): EffectNumber[] {
  const seconds = ({ plan }: PlanAnalysis, side: "left" | "right") =>
    plan.items.reduce((sum, item) => {
      if (item.kind !== "move" || (item.side !== side && item.side !== "both" && item.side !== "alternating"))
        return sum;
      return sum + (item.side === side ? item.seconds : item.seconds / 2);
    }, 0);
  return (["left", "right"] as const).map((side) =>
    number(`Work on the ${side}`, seconds(before, side), seconds(after, side), "seconds"),
  );
}

const changeSeconds = ({ clock }: PlanAnalysis): number =>
  clock.rows.reduce((sum, { transitionFrom, start }) => sum + start - transitionFrom, 0);

function load(before: PlanAnalysis, after: PlanAnalysis, itemId: string): EffectNumber[] {
  const rowOf = ({ plan }: PlanAnalysis) => loadRows(plan).find(({ item }) => item === itemId);
  const [was, is] = [rowOf(before), rowOf(after)];
  const both = (
    name: string,
    a: number | null | undefined,
    b: number | null | undefined,
    unit: EffectNumber["unit"],
  ) => (a == null || b == null ? [] : [number(name, a, b, unit)]);
  return [
    ...both("Force half way", was?.atMidN, is?.atMidN, "newtons"),
    ...both("Work in one repetition", was?.workPerRepJ, is?.workPerRepJ, "joules"),
  ];
}

const talk = (before: PlanAnalysis, after: PlanAnalysis, itemId: string): EffectNumber =>
  number("Talk here", before.talk.get(itemId)?.seconds ?? 0, after.talk.get(itemId)?.seconds ?? 0, "seconds");

function shares(before: PlanAnalysis, after: PlanAnalysis): EffectNumber[] {
  const share = ({ balance }: PlanAnalysis, group: (typeof GROUPS)[number]) => balance.groups[group]?.share ?? 0;
  const all = GROUPS.map((group) =>
    number(`Share of ${tagWords(group)}`, share(before, group), share(after, group), "share"),
  );
  const by = ({ before: was, after: is }: EffectNumber) => Math.abs(is - was);
  return all.sort((a, b) => by(b) - by(a)).slice(0, MOST_GROUPS);
}

/** The same finding by its words and items; where the words differ, by its rule and what it is about. */
function findings(before: readonly Finding[], after: readonly Finding[]): Pick<Effect, "gone" | "come" | "changed"> {
  const exact = ({ rule, level, message, items }: Finding) => JSON.stringify([rule, level, message, [...items].sort()]);
  const not = (list: readonly Finding[], other: readonly Finding[], of: (finding: Finding) => string) => {
    const known = new Set(other.map(of));
    return list.filter((finding) => !known.has(of(finding)));
  };
  const [gone, come] = [not(before, after, exact), not(after, before, exact)];
  const left = not(come, gone, findingIdentity);
  return {
    gone: not(gone, come, findingIdentity),
    come: left,
    changed: come.filter((finding) => !left.includes(finding)),
  };
}
