/**
 * Reads springs from a text by the room's own labels: "2 light", "light x2", "one light, one middle", "1 L + 1 M". A
 * word that is not a label of this room is kept as unknown: only a person can say which spring it is.
 */
import { foldText } from "#lib/library/fold.ts";
import { type FieldSegment, type RowField, WORD_END, WORD_START } from "./field.ts";
import { SPRING_SENTENCES } from "./paste-words.ts";
import { COUNT_PATTERN, countOf, type SpringVocabulary } from "./spring-vocabulary.ts";
import type { SpringsFound } from "./types.ts";

/** What has been read from one row, field after field. */
export interface SpringsSoFar {
  counts: Record<string, number>;
  unknown: { word: string; count: number }[];
  none: boolean;
  notes: string[];
  orTime?: { text: string; seconds: number };
}
export const noSprings = (): SpringsSoFar => ({ counts: {}, unknown: [], none: false, notes: [] });
export const springsFound = (s: SpringsSoFar): SpringsFound => ({ ...s, counts: { ...s.counts } });

const NONE = new RegExp(
  `${WORD_START}(?:no|without|0|zero)\\s+springs?${WORD_END}|${WORD_START}springs?\\s+off${WORD_END}`,
  "giu",
);
const NONE_CELL = /^\s*(?:none|no|off|-+|–|—|0|nil|bw|body\s?-?weight|no springs?)\s*$/i;
/** Words that people use for springs, where they are not labels of this room. */
const SPRINGISH =
  "red|blue|yellow|green|white|black|grey|gray|orange|purple|pink|brown|gold|silver|heavy|heavies|medium|light|soft|hard|stiff|firm|strong|weak|full|half|quarter|middle";
const WEIGHTED = new RegExp(
  `${WORD_START}${COUNT_PATTERN}\\s*[x×*]?\\s*((?:extra[\\s-]+)?(?:${SPRINGISH})s?)(?:\\s+springs?)?${WORD_END}`,
  "giu",
);
const ANY_SPRING = new RegExp(
  `${WORD_START}(?:${COUNT_PATTERN}\\s*[x×*]?\\s*(\\p{L}+\\s+)?|((?:${SPRINGISH})\\s+))springs?${WORD_END}`,
  "giu",
);
const SHORT = new RegExp(`${WORD_START}${COUNT_PATTERN}\\s*[x×*]?\\s*(\\p{L}{3,12})\\.?${WORD_END}`, "giu");

/** Counted labels, "no springs", and words clearly meant as springs. Read before times. */
export function readSprings(field: RowField, words: SpringVocabulary, into: SpringsSoFar): void {
  if (words.counted) {
    field.takeAll(words.counted, "springs", (m) => {
      const [count, label] = m[1] !== undefined ? [m[1], m[2]] : [m[4], m[3]];
      return addKnown(into, words, { label: label ?? "", count: countOf(count ?? "") });
    });
  }
  field.takeAll(NONE, "springs", () => {
    into.none = true;
    return true;
  });
  field.takeAll(SHORT, "springs", (m) => {
    const read = { word: m[2] ?? "", count: countOf(m[1] ?? ""), text: m[0] };
    return read.count < 10 && addShort(into, words, read);
  });
  field.takeAll(WEIGHTED, "springs", (m) => addUnknown(into, m[2] ?? "", countOf(m[1] ?? "")));
  field.takeAll(ANY_SPRING, "springs", (m) => addUnknown(into, m[2] ?? m[3] ?? "", countOf(m[1] ?? "1")));
}

const INITIAL = new RegExp(`${WORD_START}(\\d{1,2})\\s?[x×]?\\s?(\\p{L})${WORD_END}(?!['’/])`, "gu");

/** "1 L + 1 M". Read after times. `timed`: the row also has a time, so "1 M" is not a minute. */
export function readInitials(field: RowField, words: SpringVocabulary, into: SpringsSoFar, timed: boolean): void {
  const all = [...field.left.matchAll(INITIAL)].filter((m) => words.initials.has(m[2] ?? ""));
  const several = all.length > 1 || Object.keys(into.counts).length > 0;
  field.takeAll(INITIAL, "springs", (m) => {
    const [text, figures = "", letter = ""] = m;
    if (!words.initials.has(letter) || Number(figures) >= 10) return false;
    const unit = { M: 60, S: 1 }[letter];
    if (unit !== undefined && !timed && !several) into.orTime = { text: text.trim(), seconds: Number(figures) * unit };
    return addShort(into, words, { word: letter, count: Number(figures), text: text.trim() });
  });
}

const WORD_IN_CELL = "[\\p{L}%][\\p{L}\\p{N}'’%.-]*(?:[ -]+\\p{L}+)*";
const COUNTED_AFTER = new RegExp(
  `${WORD_START}(\\p{L}[\\p{L}'’-]*(?:\\s+(?!x\\b)\\p{L}+)*)\\s*[x×*:=]\\s*(\\d{1,2})${WORD_END}`,
  "giu",
);
const REST = new RegExp(`(?:${COUNT_PATTERN}\\s*[x×*]?\\s*)?(${WORD_IN_CELL}|\\d+)`, "giu");

/** A cell that holds only springs: a label alone counts as one, and whatever is left is an unknown spring. */
export function readSpringCell(field: RowField, words: SpringVocabulary, into: SpringsSoFar): void {
  if (NONE_CELL.test(field.left)) {
    into.none = true;
    field.take(0, field.text.length, "springs");
    return;
  }
  readSprings(field, words, into);
  readAlone(field, words, into);
  field.takeAll(COUNTED_AFTER, "springs", (m) => {
    const read = { word: m[1] ?? "", count: Number(m[2]), text: m[0] };
    return addShort(into, words, read) || addUnknown(into, read.word, read.count);
  });
  field.takeAll(REST, "springs", (m) => {
    const word = m[2] ?? "";
    const count = m[1] === undefined ? 1 : countOf(m[1]);
    if (/^\d+$/.test(word)) return addUnknown(into, "", Number(word));
    return (
      /^(and|plus|with)$/i.test(word) ||
      addShort(into, words, { word, count, text: m[0] }) ||
      addUnknown(into, word, count)
    );
  });
}

const NONE_ALONE = /^\s*(?:none|nil|-+|–|—|bw|body\s?-?weight)\s*$/i;

/** A cell without a known column that holds only a word or sign for "none": read as no springs, with a note. */
export function readNoneCell(field: RowField, into: SpringsSoFar): void {
  if (!NONE_ALONE.test(field.text)) return;
  into.none = true;
  into.notes.push(SPRING_SENTENCES.readAsNone(field.text.trim()));
  field.take(0, field.text.length, "springs");
}

/** Takes labels without a number as one each. True when there were any. */
function readAlone(field: RowField, words: SpringVocabulary, into: SpringsSoFar): boolean {
  let any = false;
  if (words.alone) {
    field.takeAll(words.alone, "springs", (m) => {
      any = addKnown(into, words, { label: m[1] ?? "", count: 1 }) || any;
      into.notes.push(SPRING_SENTENCES.readAsOne(m[0].trim()));
      return true;
    });
  }
  return any;
}

const labelsIn = (text: string): string[] => text.split(/\s*(?:&|\band\b)\s*/i).filter((part) => part.trim() !== "");

function isOnlyLabels(text: string, words: SpringVocabulary): boolean {
  const parts = labelsIn(text);
  return parts.length > 0 && parts.every((part) => words.byLabel(part) !== undefined);
}

function addKnown(
  into: SpringsSoFar,
  words: SpringVocabulary,
  { label, count }: { label: string; count: number },
): boolean {
  const spring = words.byLabel(label);
  if (!spring || !Number.isFinite(count)) return false;
  if (count === 0) into.none = true;
  else into.counts[spring.id] = (into.counts[spring.id] ?? 0) + count;
  return true;
}

/** Adds a letter or an abbreviation that fits only one spring; one that fits several is unknown. */
function addShort(
  into: SpringsSoFar,
  words: SpringVocabulary,
  read: { word: string; count: number; text: string },
): boolean {
  const meant = words.shortFor(read.word);
  const [spring] = meant;
  if (meant.length > 1 && read.word.length === 1) return addUnknown(into, read.word, read.count);
  if (meant.length !== 1 || !spring) return false;
  addKnown(into, words, { label: spring.label, count: read.count });
  into.notes.push(SPRING_SENTENCES.readAs(read.text.trim(), read.count, spring));
  return true;
}

function addUnknown(into: SpringsSoFar, word: string, count: number): boolean {
  into.unknown.push({ word: foldText(word), count });
  return true;
}

const SPRINGISH_ALONE = new RegExp(`^(?:extra[\\s-]+)?(?:${SPRINGISH})s?(?:\\s+springs?)?$`, "i");

/**
 * Takes a stretch that holds only labels as one each ("light + middle"), and likewise a single word for a spring this
 * room does not have.
 */
export function readLabelStretch(
  field: RowField,
  stretch: FieldSegment,
  words: SpringVocabulary,
  into: SpringsSoFar,
): boolean {
  if (!isOnlyLabels(stretch.text, words)) {
    if (!SPRINGISH_ALONE.test(stretch.text)) return false;
    field.take(stretch.from, stretch.to, "springs");
    return addUnknown(into, stretch.text.replace(/\s+springs?$/i, ""), 1);
  }
  for (const label of labelsIn(stretch.text)) addKnown(into, words, { label, count: 1 });
  into.notes.push(SPRING_SENTENCES.readAsOne(stretch.text, labelsIn(stretch.text).length > 1));
  field.take(stretch.from, stretch.to, "springs");
  return true;
}
