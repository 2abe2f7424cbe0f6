/** The words that a reading knows: the tables, the studio's names for its springs, and names of moves, which tell nothing. */
import { perValue } from "#lib/memo/per-value.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { wordsOfName } from "./tokens.ts";
import { CLASSES, COMMON_LABELS, FACING_OF_WORD, QUANTITIES } from "./vocabulary.ts";

export interface SpringName {
  readonly id: string;
  readonly words: readonly string[];
  /** Its words are everyday adjectives or places. */
  readonly common: boolean;
}

export interface Lexicon {
  readonly springs: readonly SpringName[];
  /** Words with which an amount of springs can begin, figures apart. */
  readonly amountStarts: ReadonlySet<string>;
  /** Names of two words or more. */
  readonly moves: readonly (readonly string[])[];
  /** Those of the plan's other moves. */
  readonly others?: readonly (readonly string[])[];
  /** The studio's own words, each with the word that it is read as. */
  readonly added?: ReadonlyMap<string, string>;
}

/** A studio's own words, each with a word of the tables that means the same: `{ trolley: "carriage", toggles: "handles" }`. */
export type AddedWords = Readonly<Record<string, string>>;

/** The same table for as long as the words are the same; lower case. */
export const ownWords = perValue(
  (words: AddedWords): ReadonlyMap<string, string> =>
    new Map(Object.entries(words).map(([said, known]) => [said.toLowerCase(), known.toLowerCase()])),
);

const NO_CLASSES: readonly string[] = [];
const BY_WORD: ReadonlyMap<string, readonly string[]> = classesByWord();

const NUMBER: readonly string[] = ["number"];

/** Asked of every word, most of which are no number: a look at one character costs less than an expression. */
export const beginsWithFigure = (word: string): boolean => word.charCodeAt(0) >= 48 && word.charCodeAt(0) <= 57;

export const classesOf = (word: string): readonly string[] =>
  BY_WORD.get(word) ?? (beginsWithFigure(word) && /^\d{1,2}$/.test(word) ? NUMBER : NO_CLASSES);

function classesByWord(): Map<string, string[]> {
  const all = new Map<string, string[]>();
  const add = (word: string, name: string): void => {
    const known = all.get(word) ?? [];
    if (!known.includes(name)) all.set(word, [...known, name]);
  };
  for (const [name, words] of Object.entries(CLASSES)) for (const word of words.split(" ")) add(word, name);
  for (const word of Object.keys(FACING_OF_WORD)) add(word, "facing");
  return all;
}

/** The names of a room's springs, the longest first, so that "extra light" is not "light". */
export const saidSprings = perValue(({ springs }: Equipment): readonly SpringName[] =>
  springs
    .map(({ id, label }) => {
      const words = wordsOfName(label);
      return { id, words, common: words.length === 1 && COMMON_LABELS.has(words[0] ?? "") };
    })
    .filter(({ words }) => words.length > 0)
    .sort((a, b) => b.words.length - a.words.length),
);

/** The same words for as long as the room is the same. */
export const amountStarts = perValue((equipment: Equipment): ReadonlySet<string> => {
  const names = saidSprings(equipment).flatMap(({ words }) => formsOf(words[0] ?? ""));
  return new Set([...QUANTITIES, ...names, ...(CLASSES.springs ?? "").split(" ")]);
});

export const formsOf = (word: string): string[] => [word, `${word}s`, `${word}'s`, `${word.replace(/y$/, "ie")}s`];

/** How many words of the name stand here, the last one in the plural too; and whether it is in the plural. */
export function nameAt(name: readonly string[], wordAt: (n: number) => string | undefined): "one" | "many" | null {
  const last = name.length - 1;
  for (let n = 0; n < last; n++) if (wordAt(n) !== name[n]) return null;
  const word = wordAt(last);
  const whole = name[last] ?? "";
  if (word === whole || word === `${whole}'s`) return "one";
  return word !== undefined && (word === `${whole}s` || word === `${whole.replace(/y$/, "ie")}s`) ? "many" : null;
}
