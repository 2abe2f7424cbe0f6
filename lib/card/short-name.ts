/**
 * A short name for an edition, made from its hash, so that people can check aloud that the paper on the wall and the device
 * show the same one: "lusab-babad". It proves nothing; the signature does.
 *
 * The first 32 bits are written as two five-letter words, consonant-vowel-consonant-vowel-consonant, 16 bits a word:
 * the encoding of D. S. Wilkerson, "A Proposal for Proquints", arXiv:0901.4016 (2009).
 */
const CONSONANTS = "bdfghjklmnprstvz";
const VOWELS = "aiou";

const word = (bits: number): string =>
  [
    CONSONANTS[(bits >> 12) & 15],
    VOWELS[(bits >> 10) & 3],
    CONSONANTS[(bits >> 6) & 15],
    VOWELS[(bits >> 4) & 3],
    CONSONANTS[bits & 15],
  ].join("");

/** The short name of a hash of at least eight hex digits. Throws RangeError on anything else. */
export function shortName(hashHex: string): string {
  if (!/^[0-9a-f]{8}/.test(hashHex)) throw new RangeError("a short name needs at least eight hex digits");
  return `${word(Number.parseInt(hashHex.slice(0, 4), 16))}-${word(Number.parseInt(hashHex.slice(4, 8), 16))}`;
}
