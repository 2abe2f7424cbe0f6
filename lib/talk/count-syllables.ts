/**
 * Syllables of an English word that is not in the dictionary, from its letters: its groups of vowels without silent ones,
 * then endings and vowel pairs that add or remove one. The rules were found on one half of the plain words of the CMU
 * Pronouncing Dictionary; `tests/reference/syllables.test.ts` measures how often they are right on the other.
 */

/** Silent endings: a final e, but not in "middle"; -ed and -es, which are a syllable only after some sounds. */
const SILENT = /[^aeiouyl]e$|(?<=[aeiouyl])le$|[^aeiouytd]ed$|[^aeiouyszxcgl]es$(?<!ches|shes)|(?<=[aeiouy])les$/;

/** Each adds one syllable to the count of vowel groups; a word may match several. */
const MORE: readonly RegExp[] = [
  // Vowels in separate syllables: "medial", "violin", "radius", "area", "create", "actual", "quiet", "chaos".
  /ia(?!l?tial)/,
  /rio(?!$)/,
  /io$|eous|vio|dio[^aeiouy]|bio[^aeiouy]|cio[^aeiouy]/,
  /iu[^aeiouy]/,
  /ciat/,
  /eo(?!u)/,
  /[tnd]u(?!ing$|e[sd]?$)[aeiouy]|[aeiouy]u[aeiouy]/,
  /iet|(?<![ct])ient|(?<![tcxgsrv])iou/,
  /real|react|creat|coop|ea$|ao[^aeiouy]|[^aeiouy]ye[^aeiouy]/,
  /[aeiouy]y[aeiou](?!d$)/,
  // Endings after a vowel or an i of the stem: "going", "easier", "easiest".
  /[aeiou]ing$|(?<![aeiouy])ying$/,
  /ier$|iest$|[^aeiouy]ire[ds]?$/,
  // A consonant that forms a syllable: "spasm", "handled", "handling", "acre".
  /sm$/,
  /[^aeiouyl]led$/,
  /[bt]ling/,
  /[^aeiouy]re$/,
  /lement/,
  /^mc/,
];

/** Each removes one syllable: a silent e inside the word, or vowels that merge. */
const FEWER: readonly RegExp[] = [
  /[^aeiouy]ely$/,
  /[^aeiouy]ement/,
  /[^aeiouy]e(?:less|ful)/,
  /eness/,
  /[^aeiouy]eman$/,
  /fore[^aeiouy]|^home[^aeiouy]/,
  /[^aeiouy]icall/,
  /cia|tial|sian/,
  /gue$/,
  /^geo|^ey/,
];

/** At least 1. `letters`: lower case, a to z only. */
export function countSyllables(letters: string): number {
  const word = letters.replaceAll("qu", "q");
  const groups = word.match(/[aeiouy]+/g)?.length ?? 0;
  const more = MORE.filter((rule) => rule.test(word)).length;
  const fewer = FEWER.filter((rule) => rule.test(word)).length;
  return Math.max(1, groups - (SILENT.test(word) ? 1 : 0) + more - fewer);
}
