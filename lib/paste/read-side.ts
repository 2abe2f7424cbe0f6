/** Reads sides, facing and where the person sits from the words of a row. */
import type { Facing } from "#lib/plan/schema.ts";
import { type RowField, WORD_END, WORD_START } from "./field.ts";
import type { RowSide, TextSpan } from "./types.ts";

const LIMB = "(?:sides?|legs?|arms?|hands?|foot|feet|knees?)";
const LEFT = `(?:left|lhs|l)`;
const RIGHT = `(?:right|rhs|r)`;
const JOINT = "\\s*(?:/|\\+|&|,|and|then|-|–)\\s*";
const THE = "(?:(?:on|to)\\s+)?(?:the\\s+)?";

interface SidePattern {
  readonly side: RowSide;
  readonly pattern: RegExp;
}

const pattern = (source: string): RegExp => new RegExp(`${WORD_START}${source}${WORD_END}`, "giu");

/** Longer wordings come first: what one takes, the next does not see. */
const WORDINGS: readonly SidePattern[] = [
  { side: "left-right", pattern: pattern(`${LEFT}(?:\\s+${LIMB})?${JOINT}${RIGHT}(?:\\s+${LIMB})?`) },
  { side: "right-left", pattern: pattern(`${RIGHT}(?:\\s+${LIMB})?${JOINT}${LEFT}(?:\\s+${LIMB})?`) },
  { side: "left-right", pattern: pattern(`(?:on\\s+)?(?:each|ea\\.?|per|every)\\s+(?:${LIMB}|way|direction)`) },
  { side: "left-right", pattern: pattern("(?:e\\s?/\\s?s|p\\s?/\\s?s)") },
  { side: "left-right", pattern: new RegExp(`/\\s*(?:${LIMB}|each|ea)${WORD_END}`, "giu") },
  {
    side: "alternating",
    pattern: pattern("(?:alternating|alternately|alternate|altern|alt)(?:\\s+(?:sides|legs|arms|hands))?"),
  },
  { side: "both", pattern: pattern("(?:on\\s+)?both(?:\\s+(?:sides|legs|arms|hands|together))?") },
  { side: "left", pattern: pattern(`${THE}(?:left|lhs)(?:\\s+${LIMB}(?:\\s+only)?)?`) },
  { side: "right", pattern: pattern(`${THE}(?:right|rhs)(?:\\s+${LIMB}(?:\\s+only)?)?`) },
];
/** A single letter is a side only as a capital or in brackets. */
const CAPITAL =
  /(?<![\p{L}\p{N}'’]|\p{L}\/)(?!\p{L}\/\p{L}(?!\p{L}))(?:\(\s*([LRlr])\s*\)|([LR])(?:\s+(?:sides?|legs?|arms?|hands?|foot|feet|knees?))?)(?![\p{L}\p{N}'’.])\.?/gu;
const LETTER_COLUMN = /(?<![\p{L}\p{N}])([lr])(?![\p{L}\p{N}])/giu;
/** Only after a time: "30 s each", "60 ea". */
const EACH = /(?<=[\uFDD0\d]\s*)(?:each|ea\.?)(?![\p{L}\p{N}])/giu;
const BOTH_COLUMN = /^\s*(?:b|bi|bilateral|each|ea|2|two|l\s?r|lr)\s*$/i;

/**
 * Takes the sides out of a field. `column`: the field is from a column of sides, where small letters count too. `kept`:
 * a stretch that is the name of a move, whatever it says.
 */
export function readSides(field: RowField, column: boolean, kept: TextSpan | null): RowSide[] {
  const found: RowSide[] = [];
  const free = (m: RegExpExecArray) => kept === null || m.index + m[0].length <= kept.from || m.index >= kept.to;
  const takeAs = (side: (m: RegExpExecArray) => RowSide | null, by: RegExp) =>
    field.takeAll(by, "side", (m) => {
      const read = free(m) ? side(m) : null;
      if (read !== null) found.push(read);
      return read !== null;
    });
  if (column && BOTH_COLUMN.test(field.left)) {
    takeAs((m) => (/b/i.test(m[0]) ? "both" : "left-right"), /\S.*\S|\S/g);
    return found;
  }
  for (const { side, pattern: by } of WORDINGS) takeAs((m) => (twoLetters(m[0], column) ? side : null), by);
  takeAs(() => "left-right", EACH);
  takeAs((m) => letterSide(m[1] ?? m[2]), column ? LETTER_COLUMN : CAPITAL);
  return found;
}

/** "l/r" counts as "L/R"; a small letter joined to a word does not: "l and right" is not two sides. */
function twoLetters(text: string, column: boolean): boolean {
  const single = text.match(/(?<!\p{L})[lr](?!\p{L})/giu) ?? [];
  return column || single.length !== 1 || /[LR]/.test(single[0] ?? "");
}

const letterSide = (letter: string | undefined): RowSide => (letter?.toLowerCase() === "l" ? "left" : "right");

const FACING = new RegExp(
  `${WORD_START}(?:facing|face|faces)\\s+(?:the\\s+|to\\s+the\\s+)?(front|back|left|right)${WORD_END}`,
  "iu",
);

/** Takes "facing back" out of the field. */
export function readFacing(field: RowField): Facing | undefined {
  const m = FACING.exec(field.left);
  const facing = FACINGS_READ.find((f) => f === m?.[1]?.toLowerCase());
  if (m && facing) field.take(m.index, m.index + m[0].length, "facing");
  return facing;
}

const FACINGS_READ: readonly Facing[] = ["front", "back", "left", "right"];

const LENGTH = "([+-]?\\d{1,4}(?:[.,]\\d)?)\\s*(mm|cm)";
const FARTHER = "(further|farther|away|out)(?:\\s+(?:from|away)(?:\\s+the)?\\s+anchor)?";
const NEARER = "(closer|nearer|in)(?:\\s+(?:to|towards?)(?:\\s+the)?\\s+anchor)?";
const OFFSET = new RegExp(
  `${WORD_START}offset\\s*[:=]?\\s*${LENGTH}${WORD_END}|(?:${WORD_START}|(?=[+-]))(?:sit\\s+)?${LENGTH}\\s+(?:${FARTHER}|${NEARER})${WORD_END}`,
  "iu",
);

/**
 * Takes "offset 80 mm", "10 cm further" or "8 cm closer" out of the field. Millimetres; negative is nearer to the
 * anchor.
 */
export function readOffset(field: RowField): number | undefined {
  const m = OFFSET.exec(field.left);
  if (!m) return undefined;
  const number = Number((m[1] ?? m[3] ?? "").replace(",", "."));
  const mm = number * ((m[2] ?? m[4] ?? "").toLowerCase() === "cm" ? 10 : 1) * (m[6] ? -1 : 1);
  if (!Number.isFinite(mm) || Math.abs(mm) > 2000) return undefined;
  field.take(m.index, m.index + m[0].length, "offset");
  return mm;
}
