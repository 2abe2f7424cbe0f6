/** What is wrong with a sentence that a person reads, as far as signs show it; names and quoted words are checked as names. */

/** Words in quotes are somebody's own: how they are written is theirs. */
const QUOTED = /“[^”]*”|'[^']*'/gu;

/** Followed by these a bare 1 is no count of things: "where 1 is the most". */
const SIGNS: readonly (readonly [string, RegExp])[] = [
  ["one of several", /(?<![\d.,:])1 (?!is\b|was\b)\w+s\b/u],
  ["none as a figure", /(?<![\d.,:])0 (?!s\b|N\b|cm\b|mm\b|is\b|to\b)[a-z]/u],
  ["two spaces", / {2}/u],
  ["a hole", /[{}]|\bundefined\b|\bNaN\b|\bnull\b|\[object/u],
  ["space before a stop", / [.,;:]/u],
];

/** Singular verbs after several and plural ones after one; names are given with their number. */
function disagreement(text: string, names: Names): string[] {
  const tail = "(?:, (?:left|right|both sides|alternating))?";
  const after = (list: readonly string[], verb: string) =>
    list.some((name) => new RegExp(`${name}${tail} ${verb}\\b`, "u").test(text));
  return [
    ...(after(names.several, "(?:[a-z]+s|has)") ? ["several with a singular verb"] : []),
    ...(after([...names.one, ...names.several], "(?:are|have|were|lack|need|do|take|last|start|ask)")
      ? ["a plural verb after a name"]
      : []),
  ];
}

export interface Names {
  readonly one: readonly string[];
  readonly several: readonly string[];
}
const NO_NAMES: Names = { one: [], several: [] };

/** Everything that is wrong with a phrase; empty when nothing is. */
export function faultsOfPhrase(text: string, names: Names = NO_NAMES): string[] {
  const bare = text.replaceAll(QUOTED, "“”");
  return [...SIGNS.filter(([, sign]) => sign.test(bare)).map(([what]) => what), ...disagreement(bare, names)];
}

/** The same for a whole sentence, which begins with a capital or a figure and ends with a stop. */
export function faultsOfSentence(text: string, names: Names = NO_NAMES): string[] {
  return [
    ...faultsOfPhrase(text, names),
    ...(/^[\p{Lu}\p{N}“'-]/u.test(text) ? [] : ["no capital"]),
    ...(/[.?!]$/u.test(text) ? [] : ["no full stop"]),
  ];
}
