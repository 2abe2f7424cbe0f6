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
  return /[^s]s$/.test(word) && word.length > 2 ? word.slice(0, -1) : word;
}

/**
 * The longest of the names with which the words begin (or end), as it was given; undefined for none. Articles within and
 * before it do not count.
 */
export function nameSaidAt(said: string, at: "start" | "end", names: readonly string[]): string | undefined {
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

/** The first of the names in the words, and the longest of those that begin there. */
export function nameWithin(said: string, names: readonly string[]): string | undefined {
  const words = nameWords(said).filter((word) => !ARTICLES.has(word));
  for (let from = 0; from < words.length; from++) {
    const found = nameSaidAt(words.slice(from).join(" "), "start", names);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** What exercises are called, by stem. Common practice, no source. */
const EXERCISES =
  "row press plank squat lunge bridge curl fly pulldown twist crunch deadlift hinge pike tuck bear raise kickback pullover pushup " +
  "swing thruster burpee dip climber";
const EXERCISE_STEMS: ReadonlySet<string> = new Set(EXERCISES.split(" ").map(stem));
const A_NAME =
  /(?:^|\b(?:the|a|an|some|our|your|for|into|to|do|doing|with|on|in|have|got|we|are) )(?:[a-z]+ ){0,2}?(?<noun>[a-z]+)$/;
/** Words that tell one press from another. */
const PARTS: ReadonlySet<string> = new Set(
  "leg chest arm calf bicep tricep shoulder overhead side single split".split(" "),
);
/** Everyday words that are exercises behind a part of the body: "leg lowering", "arm circles". */
const OF_A_PART =
  /\b(?:leg|knee|hip|heel|chest|arm|calf|shoulder|side|back) (?<noun>lowering|extensions?|openers?|lift|circle|bend|reach|slide|tap|kick)$|^(?:some |our |your )?(?:leg|knee|hip|heel|arm|calf|shoulder|side) (?<many>lifts|circles|bends|reaches|slides|taps|kicks)$/;
/** "Next, feel the press": something to do with the move at hand. */
const TO_DO = /^(?:feel|find|keep|hold|try|think|notice|make|let|give|use|press|push|pull|bend|lift|more|less)\b/;

/** True where a word is what exercises are called. */
export const namesAnExercise = (said: string): boolean =>
  nameWords(said).some((word) => EXERCISE_STEMS.has(stem(word)));

/** "Out" and "back" are words of names too, but nobody calls a move that. */
export const mayNameAMove = (said: string): boolean => nameWords(said).length > 1 || namesAnExercise(said);

/** The stem of the exercise that the words end in, whether the plan knows it or not: "lie down for the bridge". */
function exerciseAtEnd(said: string): string | undefined {
  const words = said
    .replace(/\bpush ups?\b/g, "pushup")
    .replace(/\bpull downs?\b/g, "pulldown")
    .replace(/(?<= )(?:hold|series|set)$/, "")
    .trim();
  if (TO_DO.test(words)) return undefined;
  const { noun: one, many: of = one } = OF_A_PART.exec(words)?.groups ?? {};
  if (of !== undefined) return stem(single(of));
  const noun = A_NAME.exec(words)?.groups?.noun;
  const found = noun === undefined ? "" : stem(single(noun));
  return EXERCISE_STEMS.has(found) ? found : undefined;
}

/** True when the words end in an exercise that none of the names is. */
export function isOtherExercise(said: string, names: readonly string[]): boolean {
  const exercise = exerciseAtEnd(said);
  if (exercise === undefined) return false;
  const parts = nameWords(said).filter((word) => PARTS.has(word));
  return !names.some((name) => {
    const words = nameWords(name).map(stem);
    if (parts.some((part) => !words.includes(stem(part)))) return false;
    return [...words, words.join("")].some((word) => word.includes(exercise));
  });
}

/** "Bridging", "bridges" and "bridge", "squatting" and "squat": for comparing alone. */
function stem(word: string): string {
  return word.replace(/(?:ing|e)$/, "").replace(/([a-z])\1$/, "$1");
}

/** True when everything that is said, articles apart, is a part of the name: "the press" of "chest press". */
export function isPartOf(said: string, name: string): boolean {
  const wanted = nameWords(name).map(stem);
  const words = nameWords(said)
    .filter((word) => !ARTICLES.has(word))
    .map(stem);
  return words.length > 0 && words.every((word) => wanted.includes(word));
}
