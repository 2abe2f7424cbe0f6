/**
 * What people type, as it is stored: no controls and no signs that nobody can see, so that words that look empty are, and
 * nobody's name turns the words after it around. Checks of length go after it: `typedText.min(1, "...")`.
 */
import * as z from "zod";

/** Carriage returns, and what Unicode counts as a new line besides (UAX 14: NEL, LS, PS). */
const LINE_ENDS = /\r\n?|[\u0085\u2028\u2029]/g;
/**
 * Controls and what Unicode calls default ignorable (DerivedCoreProperties.txt): directions, zero widths, fillers. Joiners
 * and variation selectors stay: Persian words and many emoji need them.
 */
const UNSEEN = /(?!\n|\t|\u200C|\u200D|[\uFE00-\uFE0F])[\p{Cc}\p{Default_Ignorable_Code_Point}]/gu;
/** U+2800 is a braille cell without dots. */
const SEEN = /[^\p{Cc}\p{Default_Ignorable_Code_Point}\p{Z}\p{M}\u2800]/u;

function seenText(typed: string): string {
  const text = typed.replace(LINE_ENDS, "\n").replace(UNSEEN, "").trim();
  return SEEN.test(text) ? text : "";
}

/** Words of one line or more. */
export const typedText = z.string().overwrite(seenText);
/** One line: names, titles. */
export const typedLine = z.string().overwrite((typed) => seenText(typed).replace(/\s+/g, " "));
