/** Parts and effects in words. */

import type { Formats } from "#lib/formats/formats.ts";
import { tenthPercent } from "#lib/formats/percent.ts";
import { forceWords, offsetsIn } from "#lib/formats/units.ts";
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import { clockTime, plainNumber, sentenceCase, springLabel } from "#lib/plan/format.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import type { EffectNumber } from "./effect.ts";
import { PROPOSED_FIELD_WORDS, valueWords } from "./fits.ts";
import type { ProposalPart } from "./parts.ts";

/** "The time", "Heavy springs", "A form line is added". */
export function partName(plan: Pick<Plan, "equipment">, part: ProposalPart): string {
  switch (part.kind) {
    case "field":
      return sentenceCase(PROPOSED_FIELD_WORDS[part.field]);
    case "spring":
      return `Springs: ${springLabel(plan.equipment, part.spring)}`;
    case "line":
      return part.line.kind === part.becomes.kind
        ? `Words (${kindWord(part.line.kind)})`
        : `Words (${kindWord(part.line.kind)}, then ${kindWord(part.becomes.kind)})`;
    case "line-added":
      return `A new line (${kindWord(part.becomes.kind)})`;
    case "line-removed":
      return `A line that goes (${kindWord(part.line.kind)})`;
    case "line-moved":
      return `A line in another place (${kindWord(part.line.kind)})`;
    case "order":
      return "The order of the block";
  }
}

/** What was taken of a proposal, where it was not all of it: how many of how many parts, and which. */
export interface TakenInPart {
  readonly count: number;
  readonly of: number;
  readonly named: readonly string[];
}

/** Null where all of it was taken. `taken`: ids of parts; those of another proposal do not count. */
export function takenInPart(
  plan: Pick<Plan, "equipment">,
  parts: readonly ProposalPart[],
  taken: readonly string[],
): TakenInPart | null {
  const some = parts.filter(({ id }) => taken.includes(id));
  if (some.length === parts.length) return null;
  return { count: some.length, of: parts.length, named: [...new Set(some.map((part) => partName(plan, part)))] };
}

/** "2 of 4 parts". */
export const shareWords = ({ count, of }: Pick<TakenInPart, "count" | "of">): string => `${count} of ${of} parts`;

const kindWord = (kind: keyof typeof KIND_WORDS): string => KIND_WORDS[kind].toLowerCase();

/** What a value is and what it would become; null for what is not one value. */
export function partValues(part: ProposalPart, f: Formats): readonly [was: string, becomes: string] | null {
  if (part.kind === "field")
    return [offsetsIn(valueWords(part.field, part.was), f), offsetsIn(valueWords(part.field, part.becomes), f)];
  if (part.kind === "spring") return [countWords(part.was), countWords(part.becomes)];
  return null;
}
const countWords = (n: number): string => (n === 0 ? "none" : String(n));

/** "4:30", "45 s", "23.5%", "180 N". */
export function effectValue(value: number, unit: EffectNumber["unit"], f: Formats): string {
  switch (unit) {
    case "clock":
      return clockTime(value);
    case "seconds":
      return `${plainNumber(value)} s`;
    case "share":
      return tenthPercent(value);
    case "newtons":
      return forceWords(value, f);
    case "joules":
      return `${plainNumber(value)} J`;
  }
}

/** The difference with its sign: "+15 s", "−3%", "0". */
export function effectChange({ before, after, unit }: EffectNumber, f: Formats): string {
  const by = after - before;
  const size = unit === "clock" ? `${plainNumber(Math.abs(by))} s` : effectValue(Math.abs(by), unit, f);
  if (/^0(\.0)?\D*$/.test(size)) return "no change";
  return by > 0 ? `+${size}` : `−${size}`;
}

/** What the plan has now in the place of a part's value; undefined where it has none. */
export function currentValue(plan: Pick<Plan, "items">, part: ProposalPart, f: Formats): string | undefined {
  if (part.kind !== "field" && part.kind !== "spring") return undefined;
  const item = plan.items.find(({ id }) => id === part.item);
  if (!item || item.kind === "heading") return undefined;
  if (part.kind === "spring") return item.kind === "move" ? countWords(item.springs[part.spring] ?? 0) : undefined;
  const value = item.kind === "pause" && part.field !== "seconds" ? undefined : (item as MoveItem)[part.field];
  return offsetsIn(valueWords(part.field, value ?? null), f);
}
