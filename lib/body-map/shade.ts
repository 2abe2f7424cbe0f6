/**
 * How strongly a group is shaded: few steps, since more than four tones with four hatches are not told apart at a glance. Where
 * the steps begin is common practice, no source.
 */
import { groupShare } from "#lib/formats/percent.ts";
import { moverWords, sentenceCase, tagWords } from "#lib/plan/format.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";

/** 0: no work; 4: the strongest. */
export type Shade = 0 | 1 | 2 | 3 | 4;

/** What is given for each group: its share of all work, or its weight in a move. 0..1. */
export type ShadeOf = "share" | "weight";
export type GroupShares = Readonly<Partial<Record<Group, number>>>;

/** The least value of shades 2, 3 and 4; anything above nothing is shade 1. */
const FROM: Readonly<Record<ShadeOf, readonly [number, number, number]>> = {
  share: [0.05, 0.1, 0.2],
  // A prime mover weighs 1, a helper a half. What does less is still one of a few groups, so it is not the palest.
  weight: [0, 0.5, 1],
};

export function shadeOf(value: number, of: ShadeOf): Shade {
  if (!(value > 0)) return 0;
  const [second, third, fourth] = FROM[of];
  if (value >= fourth) return 4;
  if (value >= third) return 3;
  return value >= second ? 2 : 1;
}

export interface ShadedGroup {
  readonly group: Group;
  readonly shade: Shade;
  readonly name: string;
  /** "24%", "prime mover". */
  readonly amount: string;
}

/** The groups that work, the most first, equals in the library's order. */
export function shadedGroups(shares: GroupShares, of: ShadeOf): ShadedGroup[] {
  return GROUPS.filter((group) => (shares[group] ?? 0) > 0)
    .sort((a, b) => (shares[b] ?? 0) - (shares[a] ?? 0))
    .map((group) => {
      const value = shares[group] ?? 0;
      return { group, shade: shadeOf(value, of), name: tagWords(group), amount: amountWords(value, of) };
    });
}

const amountWords = (value: number, of: ShadeOf): string => (of === "share" ? groupShare(value) : moverWords(value));

/** "Chest 24%, shoulders 18%. No work: calves." For those who do not see the figure. */
export function bodyMapWords(shares: GroupShares, of: ShadeOf): string {
  const worked = shadedGroups(shares, of);
  if (worked.length === 0) return "No muscles named.";
  const list = sentenceCase(worked.map(({ name, amount }) => `${name} ${amount}`).join(", "));
  const rest = of === "share" ? restWords(shares) : "";
  return rest ? `${list}. ${rest}` : `${list}.`;
}

/** "No work: calves, hip flexors."; nothing where all groups work. */
export function restWords(shares: GroupShares): string {
  const rest = GROUPS.filter((group) => !((shares[group] ?? 0) > 0));
  return rest.length === 0 ? "" : `No work: ${rest.map(tagWords).join(", ")}.`;
}
