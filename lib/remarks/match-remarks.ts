/** Which of the studio's stock remarks fit what is being typed, the likeliest first. */

export interface Remark {
  readonly id: string;
  readonly words: string;
  /** The rule or the move that it belongs to; null when it fits anywhere. */
  readonly ruleId: string | null;
  readonly moveId: string | null;
}

/** What the comment is about. */
export interface RemarkPlace {
  readonly ruleId?: string | undefined;
  readonly moveId?: string | undefined;
}

/** A part of what was typed, up to the caret, that asks for remarks. Offsets are UTF-16 units. */
export interface RemarkAsked {
  /** Where the part begins that a remark replaces; it ends at the caret. */
  readonly from: number;
  /** What is looked for: the letters after "/". */
  readonly sought: string;
}

/** "/" at the beginning of a word and what follows it on its line. Ordinary writing asks for nothing. */
export function remarkAsked(text: string, caret: number): RemarkAsked | null {
  const before = text.slice(0, caret);
  const slash = /(?:^|\s)\/([^\n/]{0,60})$/u.exec(before)?.[1];
  return slash === undefined ? null : { from: caret - slash.length - 1, sought: slash.trim() };
}

/** Those of this finding's rule or this plate's move come first, then those that fit anywhere, then the rest. */
export function matchRemarks(
  remarks: readonly Remark[],
  { sought }: RemarkAsked,
  place: RemarkPlace,
  most: number,
): readonly Remark[] {
  const words = plain(sought).split(" ").filter(Boolean);
  const fits = remarks.filter((remark) => {
    const own = plain(remark.words).split(" ");
    return words.every((word) => own.some((one) => one.startsWith(word)));
  });
  return fits.toSorted((a, b) => rankOf(a, place) - rankOf(b, place)).slice(0, most);
}

function rankOf({ ruleId, moveId }: Remark, place: RemarkPlace): number {
  if (ruleId !== null && ruleId === place.ruleId) return 0;
  if (moveId !== null && moveId === place.moveId) return 0;
  return ruleId === null && moveId === null ? 1 : 2;
}

const plain = (text: string): string =>
  text
    .toLocaleLowerCase("en")
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
