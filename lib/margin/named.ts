/** Colleagues who are named in a comment: "@" and their whole name, as it was when the comment was written. */

export interface NamedPerson {
  readonly id: string;
  readonly name: string;
}

/** A stretch of a comment; `person` is who it names. */
export interface NamedPiece<P extends NamedPerson = NamedPerson> {
  readonly text: string;
  readonly person?: P;
}

/** The comment in pieces. Where one name begins with another, the longer one counts; letters of any case. */
export function namedPieces<P extends NamedPerson>(body: string, people: readonly P[]): NamedPiece<P>[] {
  const pieces: NamedPiece<P>[] = [];
  const longest = people.filter(({ name }) => name.trim() !== "").toSorted((a, b) => b.name.length - a.name.length);
  let from = 0;
  for (let at = body.indexOf("@"); at >= 0; at = body.indexOf("@", at + 1)) {
    if (at < from) continue;
    const person = longest.find(({ name }) => isNamedAt(body, at, name));
    if (!person) continue;
    const end = at + 1 + person.name.length;
    if (at > from) pieces.push({ text: body.slice(from, at) });
    pieces.push({ text: body.slice(at, end), person });
    from = end;
  }
  return from < body.length ? [...pieces, { text: body.slice(from) }] : pieces;
}

/** Ids of those who are named, each once. */
export const namedIn = (body: string, people: readonly NamedPerson[]): string[] => [
  ...new Set(namedPieces(body, people).flatMap(({ person }) => (person ? [person.id] : []))),
];

const LETTER = /[\p{L}\p{N}]/u;

/** An address such as "ines@tholepin.example" names nobody. */
function isNamedAt(body: string, at: number, name: string): boolean {
  const end = at + 1 + name.length;
  if (body.slice(at + 1, end).toLocaleLowerCase("en") !== name.toLocaleLowerCase("en")) return false;
  return !LETTER.test(body.slice(end, end + 1)) && !LETTER.test(body.slice(at - 1, at));
}
