/** Repetitions. A plan counts seconds, so a row that counts repetitions is in doubt, but it must be understood. */
import { type RowField, WORD_END, WORD_START } from "./field.ts";

const WORDINGS: readonly RegExp[] = [
  new RegExp(
    `${WORD_START}(?:(\\d)\\s*(?:sets?\\s+(?:of\\s+)?|[x×]\\s*)|[x×]\\s*)?(\\d{1,3})\\s*(?:reps?|repetitions?|times)${WORD_END}`,
    "giu",
  ),
  new RegExp(`${WORD_START}(\\d)\\s*(?:[x×]|sets?(?:\\s+of)?)\\s*(\\d{1,3})${WORD_END}`, "giu"),
  // "45 x 2" is a time done twice.
  new RegExp(`${WORD_START}(?<!\\d\\s*)[x×]\\s*()(\\d{1,3})${WORD_END}`, "giu"),
  new RegExp(`${WORD_START}()(\\d{1,3})\\s*[x×](?!\\s*\\d|[\\p{L}\\p{N}])`, "giu"),
];

/** "x45", "2 x 45". */
const AFTER_SIGN = /^\d?\s*[x×]\s*\d+$/i;
/** From here on a number after "x" is seconds: nobody counts so many in one item (common practice, no source). */
const SECONDS_FROM = 30;

/** Takes repetitions out of the field and returns how many there are in all; undefined where there are none. */
export function readReps(field: RowField): number | undefined {
  let reps: number | undefined;
  for (const wording of WORDINGS) {
    field.takeAll(wording, "time", (m) => {
      if (reps !== undefined || (Number(m[2]) >= SECONDS_FROM && AFTER_SIGN.test(m[0]))) return false;
      reps = Number(m[1] || 1) * Number(m[2]);
      return true;
    });
  }
  return reps;
}
