/** The words for one room's springs: patterns for its labels, and which letters and abbreviations mean which spring. */

import { foldText } from "#lib/library/fold.ts";
import type { Spring } from "#lib/plan/schema.ts";
import { WORD_END, WORD_START } from "./field.ts";

export interface SpringVocabulary {
  readonly springs: readonly Spring[];
  /** "2 light", "two light springs", "light x2", "light: 2"; null in a room whose springs have no labels. */
  readonly counted: RegExp | null;
  /** A label alone. */
  readonly alone: RegExp | null;
  /** Capitals that labels begin with. */
  readonly initials: ReadonlySet<string>;
  /** The spring of a label, "lights" and "light springs" included. */
  byLabel(text: string): Spring | undefined;
  /** The springs that a letter, or a beginning of at least three letters, can stand for. */
  shortFor(text: string): readonly Spring[];
}

export const COUNT_PATTERN = "(\\d{1,2}|no|one|two|three|four|five|six|seven|eight)";
const COUNTS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight"];
/** The number a count word or figure means. */
export function countOf(text: string): number {
  const word = COUNTS.indexOf(text.toLowerCase());
  return word >= 0 ? word : Number(text);
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/-]/g, "\\$&");
const SPRING = "(?:\\s+springs?)?";

export function springVocabulary(springs: readonly Spring[]): SpringVocabulary {
  const named = springs.filter((s) => /\p{L}/u.test(s.label));
  const byFold = new Map(named.map((s) => [foldText(s.label), s]));
  const labels = named
    .map((s) => s.label.trim())
    .sort((a, b) => b.length - a.length)
    .map(
      (label) =>
        `${label
          .split(/[\s-]+/)
          .map(escaped)
          .join("[\\s-]+")}s?`,
    )
    .join("|");
  const label = `(${labels})${SPRING}${WORD_END}`;
  const unit = `(?!\\s*(?:s|secs?|seconds?|m|mins?|minutes?|x|reps?|${labels})${WORD_END}|\\d|[:.,]\\d|\\s*['"×%])`;
  const counted = `${WORD_START}(?<![\\d:.,])${COUNT_PATTERN}\\s*[x×*]?\\s*${label}|${WORD_START}${label}\\s*(?:[x×*:=]\\s*)?${COUNT_PATTERN}${WORD_END}${unit}`;
  return {
    springs,
    counted: labels === "" ? null : new RegExp(counted, "giu"),
    alone: labels === "" ? null : new RegExp(`${WORD_START}${label}`, "giu"),
    initials: new Set(named.map((s) => s.label.trim().charAt(0).toUpperCase())),
    byLabel: (text) => byFold.get(foldText(text.replace(/\s+springs?$/i, ""))),
    shortFor: (text) => {
      const short = text.toLowerCase().replace(/\.$/, "");
      if (short.length === 2 || short === "") return [];
      return named.filter((s) => s.label.toLowerCase().startsWith(short));
    },
  };
}
