/** What is wrong with a sentence for people, as far as simple signs show; names and quoted words count as names. */

/** Words in quotes are somebody's own and are not checked. */
const QUOTED = /“[^”]*”|'[^']*'/gu;

/** Signs of bad wording. Before "is" or "was" a bare 1 is not a count: "where 1 is the most". */
const SIGNS: readonly (readonly [string, RegExp])[] = [
  ["one of several", /(?<![\d.,:])1 (?!is\b|was\b)\w+s\b/u],
  ["none as a figure", /(?<![\d.,:])0 (?!s\b|N\b|cm\b|mm\b|is\b|to\b)[a-z]/u],
  ["two spaces", / {2}/u],
  ["a hole", /[{}]|\bundefined\b|\bNaN\b|\bnull\b|\[object/u],
  ["space before a stop", / [.,;:]/u],
];

/** Singular verbs after a plural name and plural verbs after a singular one. */
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

/** The same for a whole sentence, which begins with a capital or a figure and ends with a full stop. */
export function faultsOfSentence(text: string, names: Names = NO_NAMES): string[] {
  return [
    ...faultsOfPhrase(text, names),
    ...(/^[\p{Lu}\p{N}“'-]/u.test(text) ? [] : ["no capital"]),
    ...(/[.?!]$/u.test(text) ? [] : ["no full stop"]),
  ];
}
