/**
 * Which moves of a class need care, and whether the script gives it. What was said once counts for the rest of the block:
 * the second side and the next move with the same caution need not hear it again. Shared by the rules and the panel.
 */

import { perValue } from "#lib/memo/per-value.ts";
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
  const isUsual = wholeBlock && Object.keys(more).length === 0;
  const heard = isUsual ? usuallyHeard(plan) : heardIn(plan, more, wholeBlock);
  const tagsOf = tagsAmong(which);
  const concerns: Concern[] = [];
  for (const one of heard) {
    const tags = tagsOf(one.own);
    if (tags.length === 0) continue;
    concerns.push(isUsual && tags.length === one.own.length ? usualConcern(one) : concernIn(one, tags, more));
  }
  return concerns;
}

/** The cautions of a move that are asked for. Kept for both lists, since the rules ask at every key press. */
const tagsAmong = perValue((which: readonly MoveCaution[]) =>
  perValue((own: readonly MoveCaution[]) => own.filter((caution) => which.includes(caution))),
);

/** With all cautions of the move, as several rules ask for it. */
const usualConcern = perValue((heard: Heard) => concernIn(heard, heard.own, {}));

function concernIn(heard: Heard, tags: readonly MoveCaution[], more: MoreWords): Concern {
  const { item, block, own, said, warned, before, saysEasier } = heard;
  const unwarned = tags.filter((caution) => !warned.includes(caution));
  const elsewhere = unwarned.length > 0 ? saidIn(item, ["easier", "breath"], more) : NO_CAUTIONS;
  const hasSafetyLine = hasLineOf(item, "safety");
  return {
    ...{ item, block, tags, unwarned, hasSafetyLine, saysEasier },
    hinted: unwarned.filter((caution) => before.includes(caution) || elsewhere.includes(caution)),
    isWarned: own.some((caution) => warned.includes(caution)),
    saysNothing: hasSafetyLine && !own.some((caution) => said.includes(caution)),
  };
}

/** What has been said by the end of an item whose move carries cautions. */
interface Heard {
  readonly item: MoveItem;
  readonly block: number;
  /** All cautions of its move. */
  readonly own: readonly MoveCaution[];
  /** What its safety lines speak of. */
  readonly said: readonly MoveCaution[];
  /** What safety lines of its block have spoken of, its own included. */
  readonly warned: readonly MoveCaution[];
  /** What safety lines of the class have spoken of before it. */
  readonly before: readonly MoveCaution[];
  readonly saysEasier: boolean;
}

/** Without words of a studio's own. Several rules ask, with other cautions. */
const usuallyHeard = perValue((plan: Plan) => heardIn(plan, {}, true));

function heardIn(plan: Plan, more: MoreWords, wholeBlock: boolean): Heard[] {
  const blocks = wholeBlock ? blockNumbers(plan.items) : plan.items.map((_, i) => i);
  const easier = new Set<string>();
  let ever: readonly MoveCaution[] = NO_CAUTIONS;
  let warned: readonly MoveCaution[] = NO_CAUTIONS;
  return plan.items.flatMap((item, i): Heard[] => {
    if (blocks[i] !== blocks[i - 1]) warned = NO_CAUTIONS;
    const move = item.kind === "move" ? moveOf(plan, item) : undefined;
    const own = move ? cautionsOf(move) : NO_CAUTIONS;
    if (item.kind !== "move" || own.length === 0) return [];
    const before = ever;
    const said = saidIn(item, ["safety"], more);
    for (const caution of said) {
      if (!own.includes(caution)) continue;
      warned = withOne(warned, caution);
      ever = withOne(ever, caution);
    }
    if (hasLineOf(item, "easier")) easier.add(item.move);
    return [{ item, block: blocks[i] ?? 0, own, said, warned, before, saysEasier: easier.has(item.move) }];
  });
}

const withOne = (all: readonly MoveCaution[], one: MoveCaution): readonly MoveCaution[] =>
  all.includes(one) ? all : [...all, one];

const NO_CAUTIONS: readonly MoveCaution[] = [];
const cautionsOf = perValue(({ cautions }: Move): readonly MoveCaution[] =>
  cautions ? MOVE_CAUTIONS.filter((caution) => cautions.includes(caution)) : NO_CAUTIONS,
);

function saidIn({ script = [] }: MoveItem, kinds: readonly CueKind[], more: MoreWords): readonly MoveCaution[] {
  let said = NO_CAUTIONS;
  for (const line of script)
    if (kinds.includes(line.kind)) for (const caution of spokenWith(line, more)) said = withOne(said, caution);
  return said;
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
