/**
 * What the appearance of a row suggests: a heading, a pause, a total, a repetition, the opening or closing, a formula.
 */
import { foldText } from "#lib/library/fold.ts";
import { MAX_ROW } from "./limits.ts";
import type { Sign, SplitRow } from "./types.ts";

const foldedSet = (words: string): ReadonlySet<string> => new Set(words.split(" ").map(foldText));
const PAUSE = foldedSet(
  "water drink rest break stretch stretching pause recover recovery sip towel breather hydrate hydration",
);
const REPEAT =
  /^(repeat|rpt|same|again|ditto|((then|now|and) )?(on )?(the )?other side|second side|2nd side|opposite side|(switch|change|swap)( to)?( the)?( other)? side|then (left|right)|and again|(\d|two|three) (round|set|time)$|x ?\d$)/;
const TOTAL = /^(sub ?total|total|sum|overall|grand total)\b|^end( of( the)? class)?$/;
const EDGE = /^(opening|welcome|intro|introduction|closing|outro|cool ?down|warm ?up|goodbye|arrival)\b/;
const FORMULA = /^\s*=\s*[\p{L}\d("$+-]|^\s*[@+]\p{L}+\d*\(|^\s*#(REF|N\/A|VALUE|NAME|DIV\/0|NUM|NULL|SPILL)[!?]?/iu;
const MARKED_HEADING = /^\s*#{1,6}\s+\S|^\s*(\*\*|__)[^*_]+:?\1:?\s*$|^\s*=+\s+\S.*\S\s+=+\s*$|:\s*(\*\*|__)?\s*$/;

/** Signs of a row from its raw cells; `words` is what was not read as a time, a side or springs. */
export function signsOf(row: SplitRow, words: string): Sign[] {
  const text = row.cells
    .map((c) => c.text)
    .join("  ")
    .slice(0, MAX_ROW);
  const fold = foldText(text);
  const own = foldText(words);
  const signs: Sign[] = [];
  const add = (sign: Sign, has: boolean) => has && signs.push(sign);
  add("too-long", row.to - row.from > MAX_ROW);
  add(
    "formula",
    row.cells.some((c) => FORMULA.test(c.text)),
  );
  add("heading", MARKED_HEADING.test(text.trim()));
  add("capitals", isCapitals(words));
  add("total", TOTAL.test(own));
  add("repeat", REPEAT.test(fold));
  add("edge", EDGE.test(own));
  add(
    "pause",
    own.split(" ").some((word) => PAUSE.has(word)),
  );
  return signs;
}

function isCapitals(words: string): boolean {
  const letters = words.match(/\p{L}/gu) ?? [];
  return letters.length >= 3 && letters.every((l) => l === l.toUpperCase() && l !== l.toLowerCase());
}

const MARK = "(?:[-*+•‣◦·–—▪●○■□☐☑✓✔>]|\\[[ xX]?\\]|\\(?\\d{1,3}[.)]|\\(?[a-kA-Km-qM-Qs-zS-Z][.)]|#{1,6})";
/**
 * A mark that no word, number or time begins with needs no space after it: "1)Plank", "•Plank", "-Plank". "1 - Plank" is
 * numbered too, with a number too small to be a time.
 */
const CLOSE_MARK =
  "(?:[-*•‣◦·–—▪●○■□☐☑✓✔>](?=\\p{L})|\\(?\\d{1,3}\\)|\\d{1,2}\\.(?=\\p{L})|(?:[1-9]|1[0-4])\\s+[-–—]\\s+(?=\\p{L}))";
const BULLET = new RegExp(`^\\s*(?:${MARK}\\s+)*(?:${CLOSE_MARK}\\s*)?(?:${MARK}\\s+)*`, "u");

/** How many UTF-16 units at the start of a row are a bullet, or a list number or letter. */
export const bulletLength = (text: string): number => BULLET.exec(text)?.[0].length ?? 0;
