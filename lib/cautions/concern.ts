/**
 * Which moves of a class need care, and whether the script gives it. What was said once counts for the rest of the block:
 * the second side and the next move with the same caution need not hear it again. Shared by the rules and the panel.
 */

import { blockNumbers } from "#lib/plan/blocks.ts";
import { plural } from "#lib/plan/format.ts";
import { hasLineOf, moveOf } from "#lib/plan/lookup.ts";
import {
  type CueKind,
  type ExpectedCaution,
  MOVE_CAUTIONS,
  type Move,
  type MoveCaution,
  type MoveItem,
  type Plan,
} from "#lib/plan/schema.ts";
import { EXPECTED_GUIDANCE } from "./expected.ts";
import { type MoreWords, spokenWith } from "./safety-words.ts";

/** A move item whose move carries cautions. All lists are in the order of MOVE_CAUTIONS. */
export interface Concern {
  readonly item: MoveItem;
  /** Its block: a number that items of one block share. */
  readonly block: number;
  /** Its cautions among those asked for. */
  readonly tags: readonly MoveCaution[];
  /** Those that no safety line speaks of, here or earlier in the block. */
  readonly unwarned: readonly MoveCaution[];
  /** Those of `unwarned` that something else answers: a line of another kind here, or a safety line in an earlier block. */
  readonly hinted: readonly MoveCaution[];
  /** Whether a safety line, here or earlier in the block, speaks of one of its cautions. */
  readonly isWarned: boolean;
  readonly hasSafetyLine: boolean;
  /** Whether it has safety lines of its own that speak of none of its cautions. */
  readonly saysNothing: boolean;
  /** Whether there is an easier line, here or with the same move earlier in the class. */
  readonly saysEasier: boolean;
}

interface ConcernOptions {
  readonly moreWords?: MoreWords;
  /** False: every item is a block of its own. */
  readonly wholeBlock?: boolean;
}

/** In plan order. */
export function concernsOf(plan: Plan, which: readonly MoveCaution[], options: ConcernOptions = {}): Concern[] {
  const { moreWords: more = {}, wholeBlock = true } = options;
  const blocks = wholeBlock ? blockNumbers(plan.items) : plan.items.map((_, i) => i);
  const everWarned = new Set<MoveCaution>();
  const easier = new Set<string>();
  let warned = new Set<MoveCaution>();
  return plan.items.flatMap((item, i): Concern[] => {
    if (blocks[i] !== blocks[i - 1]) warned = new Set();
    const own = item.kind === "move" ? cautionsOf(moveOf(plan, item)) : [];
    if (item.kind !== "move" || own.length === 0) return [];
    const before = new Set(everWarned);
    const said = saidIn(item, ["safety"], more);
    for (const caution of said) {
      if (!own.includes(caution)) continue;
      warned.add(caution);
      everWarned.add(caution);
    }
    if (hasLineOf(item, "easier")) easier.add(item.move);
    const tags = own.filter((caution) => which.includes(caution));
    if (tags.length === 0) return [];
    const unwarned = tags.filter((caution) => !warned.has(caution));
    const elsewhere = unwarned.length > 0 ? saidIn(item, ["easier", "breath"], more) : new Set();
    return [
      {
        ...{ item, block: blocks[i] ?? 0, tags, unwarned },
        hinted: unwarned.filter((caution) => before.has(caution) || elsewhere.has(caution)),
        isWarned: own.some((caution) => warned.has(caution)),
        hasSafetyLine: hasLineOf(item, "safety"),
        saysNothing: hasLineOf(item, "safety") && !own.some((caution) => said.has(caution)),
        saysEasier: easier.has(item.move),
      },
    ];
  });
}

const cautionsOf = (move: Move | undefined): readonly MoveCaution[] =>
  MOVE_CAUTIONS.filter((caution) => move?.cautions?.includes(caution));

function saidIn(item: MoveItem, kinds: readonly CueKind[], more: MoreWords): Set<MoveCaution> {
  return new Set((item.script ?? []).flatMap((line) => (kinds.includes(line.kind) ? spokenWith(line, more) : [])));
}

export const isAnswered = ({ unwarned, saysEasier }: Concern): boolean => unwarned.length === 0 && saysEasier;

/** "5 moves concern them, 2 without a safety line or an easier line". Ignores the studio's limits for the rule. */
export function concernWords(plan: Plan, condition: ExpectedCaution): string {
  const which = EXPECTED_GUIDANCE.find((g) => g.condition === condition)?.concerns ?? [];
  const found = concernsOf(plan, which);
  if (found.length === 0) return "no move of this class concerns them";
  const open = found.filter((concern) => !isAnswered(concern)).length;
  const says =
    open === 0 ? "each with a safety line and an easier line" : `${open} without a safety line or an easier line`;
  return `${plural(found.length, "move concerns", "moves concern")} them, ${says}`;
}
