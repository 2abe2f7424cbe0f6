/**
 * Syllables of an English word nobody has looked up, from its letters: its groups of vowels, silent letters taken off, then
 * the endings and neighbours of vowels that say one more or one less. The rules were found on one half of the plain words of
 * the CMU Pronouncing Dictionary; `tests/reference/syllables.test.ts` says how often they are right on the other.
 */

/** Silent letters at the end: a last e, but not of "middle"; -ed and -es are heard after some sounds only. */
const SILENT = /[^aeiouyl]e$|(?<=[aeiouyl])le$|[^aeiouytd]ed$|[^aeiouyszxcgl]es$(?<!ches|shes)|(?<=[aeiouy])les$/;

/** Each says one syllable more than its group of vowels: a word may have several. */
const MORE: readonly RegExp[] = [
  // Vowels that part: "medial", "violin", "radius", "area", "create", "actual", "quiet", "chaos".
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
  // A consonant that is said as a syllable: "spasm", "handled", "handling", "acre".
  /sm$/,
  /[^aeiouyl]led$/,
  /[bt]ling/,
  /[^aeiouy]re$/,
  /lement/,
  /^mc/,
];

/** Each says one syllable less: an e that is silent inside the word, vowels that melt. */
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
