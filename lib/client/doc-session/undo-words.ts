/** What an undo or redo did, in one sentence for the live region. */
import type { ValueWords } from "./description.ts";

/** `told`: what the undo itself answered; a sentence of its own says more than the values that changed. */
export function undoWords(what: "Undone" | "Redone", told: unknown, changed: readonly ValueWords[]): string {
  const own = sentenceOf(told);
  if (own) return own;
  const [first] = changed;
  if (!first) return `${what}.`;
  const rest = changed.length - 1;
  const more = rest === 0 ? "" : rest === 1 ? ", and one more value" : `, and ${rest} more values`;
  return `${what}: ${first.name} is ${first.says}${more}.`;
}

function sentenceOf(told: unknown): string | undefined {
  if (typeof told === "string") return told || undefined;
  const sentence = typeof told === "object" && told !== null && "sentence" in told ? told.sentence : undefined;
  return typeof sentence === "string" ? sentence : undefined;
}
