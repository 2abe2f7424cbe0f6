/**
 * A line as sentences of plain words: lower case, no accents, short forms written out, live fields as one word, a comma as a
 * word of its own. Each word knows where it stands in the text.
 */
import { LIVE_FIELDS } from "#lib/plan/schema.ts";
import { addressed } from "./address.ts";

interface Word {
  /** Index in `Sentence.words`. */
  readonly at: number;
  readonly length: number;
  /** Characters of the text. */
  readonly from: number;
  readonly to: number;
}
export interface Sentence {
  /** "next up , the side plank" */
  readonly words: string;
  readonly places: readonly Word[];
}
/** The words between two commas. */
export interface SpokenClause {
  readonly words: string;
  /** Index of its first word in the sentence's words. */
  readonly at: number;
  readonly sentence: Sentence;
}

/** Stands for a live field: the plan fills it in, so it claims nothing. */
export const LIVE = "livefield";
/** More than a minute of talk: what goes on is no cue, and must not keep others waiting. */
const LONGEST_TEXT = 1000;
const PIECES =
  /\{\{|\{[a-z-]+\}|\d+:\d\d|\d+(?:\.\d+)?|[\p{L}\p{M}]+(?:['’][\p{L}]+)*|\s[-–—]+\s|[,:()"“”…—&]|[.!?;\n]/gu;

/** The answer to it belongs to the same sentence. */
const ASKS_WHAT_IS_NEXT = /\bwhat (?:is|comes|follows) (?:coming )?(?:next|after (?:this|that))$/;

/** A word or a comma, and the characters of the text that it stands for. */
interface Piece {
  readonly word: string;
  readonly from: number;
  readonly to: number;
}

export function sentencesOf(text: string): Sentence[] {
  const sentences: Sentence[] = [];
  let clauses: Piece[][] = [[]];
  const end = () => {
    const sentence = joined(clauses.flatMap(setOff));
    if (sentence.words !== "") sentences.push(sentence);
    clauses = [[]];
  };
  for (const found of text.slice(0, LONGEST_TEXT).matchAll(PIECES)) {
    const piece = found[0];
    const last = clauses.at(-1) ?? [];
    if (/^[.!?;\n]$/.test(piece) && !(piece === "?" && ASKS_WHAT_IS_NEXT.test(wordsOf(last)))) {
      end();
      continue;
    }
    const word = plainWord(piece);
    if (word !== "") last.push({ word, from: found.index, to: found.index + piece.length });
    if (word === ",") clauses.push([]);
  }
  end();
  return sentences;
}

const wordsOf = (pieces: readonly Piece[]): string => pieces.map(({ word }) => word).join(" ");

/** With commas around the words of a clause that only speak to people. */
function setOff(clause: readonly Piece[]): Piece[] {
  const spoken = clause.filter(({ word }) => word !== ",");
  const { opening, closing } = addressed(wordsOf(spoken));
  if (opening + closing === 0) return [...clause];
  const pauseAt = (n: number): Piece[] => {
    const at = spoken[n]?.from ?? 0;
    return [{ word: ",", from: at, to: at }];
  };
  const until = spoken.length - closing;
  return [
    ...(opening > 0 ? [...spoken.slice(0, opening), ...pauseAt(opening)] : []),
    ...spoken.slice(opening, until),
    ...(closing > 0 ? [...pauseAt(until), ...spoken.slice(until)] : []),
    ...clause.slice(spoken.length),
  ];
}

function joined(pieces: readonly Piece[]): Sentence {
  let words = "";
  const places: Word[] = [];
  for (const { word, from, to } of pieces) {
    if (word === "," && (words === "" || words.endsWith(","))) continue;
    const at = words === "" ? 0 : words.length + 1;
    words = words === "" ? word : `${words} ${word}`;
    places.push({ at, length: word.length, from, to });
  }
  return { words, places };
}

export function spokenClausesOf(sentence: Sentence): SpokenClause[] {
  let at = 0;
  return sentence.words.split(",").flatMap((part): SpokenClause[] => {
    const start = at + (part.length - part.trimStart().length);
    at += part.length + 1;
    const words = part.trim();
    return words === "" ? [] : [{ words, at: start, sentence }];
  });
}

/** The characters of the text that some words of a sentence were read from. */
export function charsOf({ places }: Sentence, at: number, length: number): { from: number; to: number } {
  const inside = places.filter((word) => word.at < at + length && word.at + word.length > at);
  return { from: inside[0]?.from ?? 0, to: inside.at(-1)?.to ?? 0 };
}

const isField = (name: string): boolean => LIVE_FIELDS.some((field) => field === name);

function plainWord(piece: string): string {
  if (piece.startsWith("{")) return isField(piece.slice(1, -1)) ? LIVE : "";
  if (piece === "&") return "and";
  if (!/[\p{L}\d]/u.test(piece)) return ",";
  const word = ASCII.test(piece) ? piece.toLowerCase() : withoutAccents(piece).toLowerCase().replaceAll("’", "'");
  return Object.hasOwn(WRITTEN_OUT, word) ? (WRITTEN_OUT[word] as string) : writtenOut(word);
}

const ASCII = /^[\x20-\x7e]*$/;
const withoutAccents = (piece: string): string => piece.normalize("NFKD").replace(/\p{M}+/gu, "");

/** Short forms that follow no rule, with and without the apostrophe. */
const WRITTEN_OUT: Readonly<Record<string, string>> = {
  "let's": "lets",
  "can't": "can not",
  cant: "can not",
  "won't": "will not",
  wont: "will not",
  dont: "do not",
  isnt: "is not",
  arent: "are not",
  youre: "you are",
  youve: "you have",
  weve: "we have",
  thats: "that is",
  theres: "there is",
  heres: "here is",
  whats: "what is",
  "it's": "it is",
  its: "it is",
  secs: "seconds",
  sec: "second",
  mins: "minutes",
  min: "minute",
};
const SHORT_ENDS: readonly (readonly [RegExp, string])[] = [
  [/n't$/, " not"],
  [/'re$/, " are"],
  [/'ve$/, " have"],
  [/'ll$/, " will"],
  [/(?<=^i)'m$/, " am"],
  [/(?<=^i)'d$/, " would"],
  [/(?<=^(?:that|there|here|what|he|she|who|where|left|right|half|work|leg|arm|side|this))'s$/, " is"],
];
function writtenOut(word: string): string {
  if (!word.includes("'")) return word;
  for (const [end, out] of SHORT_ENDS) if (end.test(word)) return word.replace(end, out);
  return word.replaceAll("'", "");
}
