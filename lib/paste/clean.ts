/**
 * Makes pasted text harmless without moving a character: every offset of the clean text is one of the pasted text.
 */

/** Line ends become "\n" ("\r\n" stays two characters); control characters and lone surrogates become spaces. */
export function cleanText(text: string): string {
  return text
    .replace(/\r\n/g, " \n")
    .replace(/[\r\v\f\u0085\u2028\u2029]/g, "\n")
    .replace(/[^\P{Cc}\n\t]|\p{Cs}/gu, " ")
    .replace(/[\p{Zs}\uFEFF\u200B\uFDD0]/gu, " ");
}

/** Characters that change the direction of reading: their effect would spill over into the text beside them. */
const TURNING = /[\u200E\u200F\u061C\u202A-\u202E\u2066-\u2069]/g;

/** Words of a person as a plan may hold them: one line, no direction marks, at most `max` UTF-16 units. */
export function cleanWords(text: string, max: number): string {
  const line = text.replace(TURNING, "").replace(/\s+/g, " ").trim();
  if (line.length <= max) return line;
  return line
    .slice(0, max)
    .replace(/[\uD800-\uDBFF]$/, "")
    .trimEnd();
}
