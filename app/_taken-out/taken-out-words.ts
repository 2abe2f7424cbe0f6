/** The notice about an item that somebody else took out, and the item's words as text. */
import { readerOf } from "#lib/cues/as-read.ts";
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";

/** All words of an item, one line each; "" when it has none. */
export function itemWordsAsText(plan: Plan, item: PlanItem): string {
  if (item.kind === "heading") return item.title;
  if (item.kind === "pause") return item.text ?? "";
  const asRead = readerOf(plan);
  return (item.script ?? []).map(({ kind, text }) => `${KIND_WORDS[kind]}: ${asRead(item, text)}`).join("\n");
}

export const TYPED_KEPT = {
  title: "Your words are kept here",
  sentence: "What you were writing about is not in the plan any more. Your words are kept here until you discard them.",
  discard: "Discard these words",
} as const;

interface Lost {
  readonly undone: boolean;
  readonly words: string;
  /** False for somebody who reads only: they wrote none of its words and cannot put it back. */
  readonly writes: boolean;
}

/** "Jonas Berg took Plank to pike out of the plan. Its words, yours included, are kept, and it can be put back." */
export function lossWords(who: string, name: string, { undone, words, writes }: Lost): string {
  const did = undone ? `${who} undid adding ${name}.` : `${who} took ${name} out of the plan.`;
  const has = words.trim() === "" ? "It is" : "Its words are";
  if (!writes) return `${did} ${has} kept, and whoever writes the plan can put it back.`;
  const kept = words.trim() === "" ? "It is kept and can" : "Its words, yours included, are kept, and it can";
  return `${did} ${kept} be put back.`;
}
