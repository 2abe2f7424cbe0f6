/** Reads how many: "two", "another pair of", "the second", "x 2". */
import type { Token } from "./tokens.ts";
import { NUMBERS } from "./vocabulary.ts";

export interface Quantity {
  readonly count: number | null;
  readonly more: boolean;
  readonly less?: boolean;
  /** "The", "your": as many as the noun says. */
  readonly definite: boolean;
  readonly end: number;
}

const ALL: readonly string[] = ["all", "every", "everything"];
export const THE: readonly string[] = ["the", "your", "that", "my", "our", "this", "those"];
export const LESS: readonly string[] = ["less", "fewer"];
export const MORE: readonly string[] = ["more", "extra", "further", "additional"];

export interface Behind {
  readonly count: number;
  readonly end: number;
  readonly more?: boolean;
}

/** "Heavy x 2", "light times two". */
export function timesAt(tokens: readonly Token[], at: number): Behind | null {
  const [sign, number] = [tokens[at], tokens[at + 1]];
  if (!sign || sign.gap > 0) return null;
  const joined = /^x(\d)$/.exec(sign.word)?.[1];
  if (joined !== undefined) return { count: Number(joined), end: at + 1 };
  const count =
    number && number.gap === 0 && ["x", "times", "is", "are"].includes(sign.word) ? numberOf(number.word) : null;
  return count === null ? null : { count, end: at + 2 };
}

/** A number in words or figures; null for any other word. */
export const numberOf = (word: string): number | null => {
  const digits = /^(\d{1,2})x?$/.exec(word)?.[1];
  if (digits !== undefined) return Number(digits);
  return Object.hasOwn(NUMBERS, word) ? (NUMBERS[word] ?? null) : null;
};

export function quantityAt(tokens: readonly Token[], at: number): Quantity | null {
  const word = tokens[at]?.word ?? "";
  const next = tokens[at + 1]?.word ?? "";
  const exactly = (count: number | null, end: number, more = false): Quantity => ({
    count,
    more,
    end,
    definite: false,
  });
  const pairAt = word === "a" ? at + 1 : at;
  if (PAIRS.has(tokens[pairAt]?.word ?? "") && (word === "a" || next === "of")) {
    const end = passOver(tokens, pairAt + 1, ["of", ...MORE]);
    return exactly(PAIRS.get(tokens[pairAt]?.word ?? "") ?? 1, end, MORE.includes(tokens[end - 1]?.word ?? ""));
  }
  if (word === "another" && numberOf(next) !== null) return exactly(numberOf(next), at + 2, true);
  if (ALL.includes(word) && next !== "in" && next !== "home") {
    const end = passOver(tokens, at + 1, ["of", "the", "your", "those"]);
    const count = numberOf(tokens[end]?.word ?? "");
    return exactly(count, count === null ? end : end + 1);
  }
  if ((word === "a" || THE.includes(word)) && ONE_MORE.includes(next)) return exactly(1, at + 2, true);
  // "Second light, please."
  if (ONE_MORE.includes(word) && word !== "third") return exactly(1, at + 1, true);
  if (THE.includes(word)) {
    const end = passOver(tokens, at + 1, ["other", "last", "remaining", "same"]);
    const count = tokens[end]?.gap === 0 ? numberOf(tokens[end]?.word ?? "") : null;
    return count === null ? { count: null, more: false, definite: true, end } : exactly(count, end + 1);
  }
  const count = numberOf(word);
  if (count === null) return null;
  const end = passOver(tokens, at + 1, OF_WORDS);
  // "One of the two lights".
  const inAll = tokens[end - 1]?.word !== word && tokens[end]?.gap === 0 && numberOf(tokens[end]?.word ?? "") !== null;
  const said = exactly(count, inAll ? end + 1 : end, word === "another" || MORE.includes(next));
  return LESS.includes(next) ? { ...said, less: true } : said;
}

const PAIRS: ReadonlyMap<string, number> = new Map([
  ["couple", 2],
  ["pair", 2],
  ["single", 1],
]);
const ONE_MORE: readonly string[] = ["second", "third", "further", "extra"];
const OF_WORDS: readonly string[] = [...MORE, ...LESS, "x", "times", "of", "the", "your", "single", "those"];

function passOver(tokens: readonly Token[], at: number, words: readonly string[]): number {
  let end = at;
  while (tokens[end]?.gap === 0 && words.includes(tokens[end]?.word ?? "")) end++;
  return end;
}
