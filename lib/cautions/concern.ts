/**
 * Which moves of a class concern people with a condition, and whether the script answers them. Shared by the rule and
 * the panel.
 */

import { plural } from "#lib/plan/format.ts";
import { hasLineOf, isMoveItem, moveOf } from "#lib/plan/lookup.ts";
import {
  type ExpectedCaution,
  MOVE_CAUTIONS,
  type Move,
  type MoveCaution,
  type MoveItem,
  type Plan,
} from "#lib/plan/schema.ts";
import { EXPECTED_GUIDANCE } from "./expected.ts";

/**
 * The cautions of a move item among those asked for, in the order of MOVE_CAUTIONS, and what its script says about
 * them.
 */
export interface Concern {
  readonly tags: readonly MoveCaution[];
  readonly saysSafety: boolean;
  readonly saysEasier: boolean;
}

/** Null when the move has none of them. */
export function concernOf(item: MoveItem, move: Move | undefined, which: readonly MoveCaution[]): Concern | null {
  const tags = MOVE_CAUTIONS.filter((tag) => move?.cautions?.includes(tag) && which.includes(tag));
  if (tags.length === 0) return null;
  return { tags, saysSafety: hasLineOf(item, "safety"), saysEasier: hasLineOf(item, "easier") };
}

export const isAnswered = ({ saysSafety, saysEasier }: Concern): boolean => saysSafety && saysEasier;

/** "5 moves concern them, 2 without a safety line or an easier line". Ignores the studio's limits for the rule. */
export function concernWords(plan: Plan, condition: ExpectedCaution): string {
  const which = EXPECTED_GUIDANCE.find((g) => g.condition === condition)?.concerns ?? [];
  const found = plan.items.filter(isMoveItem).flatMap((item) => concernOf(item, moveOf(plan, item), which) ?? []);
  if (found.length === 0) return "no move of this class concerns them";
  const open = found.filter((concern) => !isAnswered(concern)).length;
  const says =
    open === 0 ? "each with a safety line and an easier line" : `${open} without a safety line or an easier line`;
  return `${plural(found.length, "move concerns", "moves concern")} them, ${says}`;
}
