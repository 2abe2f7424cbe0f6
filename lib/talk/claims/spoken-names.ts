/** Names of moves in what is said: whole words, longest name first, with or without an article, one or several. */

const ARTICLES: ReadonlySet<string> = new Set(["a", "an", "the", "your", "our", "another", "some", "one"]);

/** Words of a name as they are compared: "Side planks & reach" is "side plank and reach". */
const nameWords = (name: string): string[] =>
  name
    .normalize("NFKD")
    .replace(/\p{M}+|['’]/gu, "")
    .toLowerCase()
    .replaceAll("&", " and ")
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "")
    .map(single);

/** The same for one and for several: "presses" and "press", "rows" and "row". */
function single(word: string): string {
  if (/(?:s|x|z|ch|sh)es$/.test(word)) return word.slice(0, -2);
  return /[^s]s$/.test(word) && word.length > 3 ? word.slice(0, -1) : word;
}

/**
 * The longest of the names with which the words begin (or end), as it was given; undefined for none. Articles within and
 * before it do not count.
 */
export function nameAt(said: string, at: "start" | "end", names: readonly string[]): string | undefined {
  const words = nameWords(said).filter((word) => !ARTICLES.has(word));
  let best: { name: string; length: number } | undefined;
  for (const name of names) {
    const wanted = nameWords(name).filter((word) => !ARTICLES.has(word));
    if (wanted.length === 0 || wanted.length > words.length || wanted.length <= (best?.length ?? 0)) continue;
    const part = at === "start" ? words.slice(0, wanted.length) : words.slice(-wanted.length);
    if (part.every((word, n) => word === wanted[n])) best = { name, length: wanted.length };
  }
  return best?.name;
}

/** True when everything that is said, articles apart, is a part of the name: "the press" of "chest press". */
export function isPartOf(said: string, name: string): boolean {
  const wanted = nameWords(name);
  const words = nameWords(said).filter((word) => !ARTICLES.has(word));
  return words.length > 0 && words.every((word) => wanted.includes(word));
}
