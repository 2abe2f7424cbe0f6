/** What a comment field offers for what is typed before the caret: colleagues after "@", stock remarks after "/". */
import type { NamedPerson } from "#lib/margin/named.ts";
import { matchRemarks, type Remark, type RemarkPlace, remarkAsked } from "./match-remarks.ts";

export interface OfferedChoice {
  readonly id: string;
  /** As the list shows it. */
  readonly words: string;
  /** What is written in place of the part that asked for it. */
  readonly writes: string;
}
export interface Offers {
  readonly kind: "names" | "remarks";
  /** What a choice replaces: from here to the caret. */
  readonly from: number;
  readonly choices: readonly OfferedChoice[];
}

interface OfferFrom {
  readonly people: readonly NamedPerson[];
  readonly remarks: readonly Remark[];
  readonly place: RemarkPlace;
}

/** More than these are found by typing on; all of them are in sight under the field. */
const MOST = 6;

/** Null where there is nothing to offer. */
export function offersAt(text: string, caret: number, { people, remarks, place }: OfferFrom): Offers | null {
  const named = /(?:^|[^\p{L}\p{N}@])@([\p{L}\p{N}’'. -]{0,60})$/u.exec(text.slice(0, caret))?.[1];
  if (named !== undefined) {
    const choices = people.filter(({ name }) => beginsLike(name, named)).slice(0, MOST);
    const from = caret - named.length - 1;
    if (choices.length > 0) return { kind: "names", from, choices: choices.map(nameChoice) };
  }
  const asked = remarkAsked(text, caret);
  if (!asked) return null;
  const found = matchRemarks(remarks, asked, place, MOST);
  const choices = found.map(({ id, words }) => ({ id, words, writes: words }));
  return choices.length === 0 ? null : { kind: "remarks", from: asked.from, choices };
}

const nameChoice = ({ id, name }: NamedPerson): OfferedChoice => ({ id, words: name, writes: `@${name} ` });

/** The whole name or one of its words. A name that is written out, with a space after it, is done. */
function beginsLike(name: string, typed: string): boolean {
  const [whole, sought] = [name.toLocaleLowerCase("en"), typed.toLocaleLowerCase("en")];
  return whole.startsWith(sought) || whole.split(/\s+/u).some((word) => word.startsWith(sought));
}

/** The text with the choice in it, and where the caret stands after it. */
export function takeChoice(
  text: string,
  caret: number,
  { from }: Offers,
  { writes }: OfferedChoice,
): { readonly text: string; readonly caret: number } {
  return { text: text.slice(0, from) + writes + text.slice(caret), caret: from + writes.length };
}
