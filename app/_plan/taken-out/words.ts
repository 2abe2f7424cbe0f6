/** What is said of an item that somebody else took out, and its words as text. */
import { readerOf } from "#lib/cues/as-read.ts";
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";

/** All words of an item, a line each; "" when it has none. */
export function wordsOf(plan: Plan, item: PlanItem): string {
  if (item.kind === "heading") return item.title;
  if (item.kind === "pause") return item.text ?? "";
  const asRead = readerOf(plan);
  return (item.script ?? []).map(({ kind, text }) => `${KIND_WORDS[kind]}: ${asRead(item, text)}`).join("\n");
}

/** "Jonas Berg took out Plank to pike. Its words are kept with it, yours among them." */
export function lossWords(who: string, name: string, { undone, words }: { undone: boolean; words: string }): string {
  const did = undone ? `${who} undid the adding of ${name}.` : `${who} took out ${name}.`;
  return words.trim() === "" ? `${did} It is kept as it was.` : `${did} Its words are kept with it, yours among them.`;
}
