/** What the health page says of its lines. Pure. */
import { plural } from "#lib/plan/format.ts";

export type LineState = "right" | "wrong" | "unsure";

export const HEALTH_WORDS: Readonly<Record<LineState, string>> = {
  right: "In order",
  wrong: "Needs care",
  unsure: "Have a look",
};

/** "Backup folder"; as a heading or the beginning of a sentence. */
export const subjectWords = (what: string): string => `${what.charAt(0).toUpperCase()}${what.slice(1)}`;

/** "2 subjects need care." What nobody can be sure of is named too: it may be the one that matters. */
export function summaryWords(lines: readonly { readonly is: LineState }[]): string {
  const count = lines.filter(({ is }) => is === "wrong").length;
  const unsure = lines.filter(({ is }) => is === "unsure").length;
  if (count === 0)
    return unsure === 0 ? "Nothing needs care." : `Nothing is wrong. Have a look at ${plural(unsure, "subject")}.`;
  return count === 1 ? "1 subject needs care." : `${plural(count, "subject")} need care.`;
}
