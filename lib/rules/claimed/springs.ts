/** Whether the springs are on that are said to be. */
import { spokenSprings } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Claim, SpringsClaim } from "#lib/talk/claims/types.ts";
import type { ClaimedCase, Contradiction } from "./case.ts";

const isPlural = ({ plan }: ClaimedCase["ctx"], label: string): boolean =>
  plan.equipment.springs.some((spring) => `${spring.label.toLowerCase()}s` === label);

export function otherSprings({ ctx, placed, line }: ClaimedCase, claim: Claim & SpringsClaim): Contradiction {
  // An easier or harder way may use other springs.
  if (line.kind === "easier" || line.kind === "harder") return undefined;
  // "Two lights" are springs; "two light" may be anything.
  const isOutright = claim.sure || / on$/.test(claim.said) || (claim.count !== 1 && isPlural(ctx, claim.label));
  if (!isOutright && claim.count !== undefined && line.kind !== "setup" && line.kind !== "start") return undefined;
  const { equipment } = ctx.plan;
  const label = claim.label.replace(/^(?:of the|the|an?|your|our) /, "").trim();
  const spring = equipment.springs.find((s) => [s.label.toLowerCase(), `${s.label.toLowerCase()}s`].includes(label));
  if (!spring && (label !== "" || !claim.sure)) return undefined;
  const sum = Object.values(placed.item.springs).reduce((a, b) => a + b, 0);
  const really = spring ? (own(placed.item.springs, spring.id) ?? 0) : sum;
  if (claim.only && sum !== claim.count) return `the plan has ${spokenSprings(equipment, placed.item.springs)}`;
  return really === claim.count || (claim.count === undefined && really > 0)
    ? undefined
    : `the plan has ${spokenSprings(equipment, placed.item.springs)}`;
}
