/** The sentences of the read-through. Pure. */
import type { ReadLine } from "#lib/cues/read-through.ts";

export const HOW_TO_READ =
  "The coach says every line except the crew’s. Heads-ups and count-ins come from the plan itself. Press a line to open it in its script.";

/** The name of an item whose words go on after the next one's have begun. */
export const goesOnWords = (name: string): string => `${name}, continued`;

/** Who says a line. */
export function whoWords({ kind, at }: ReadLine): string {
  if (kind === "crew") return "crew, not said";
  if (at === null) return "no time for it";
  return kind === "heads-up" || kind === "count-in" ? "coach, from the plan" : "coach";
}
