/**
 * The names of the copies that a device keeps: one a document, history and person, so that nobody reads another one's
 * words and no copy is merged into a history that it does not continue. Built and read here alone.
 */
import { type DocKind, formatDocName, parseDocName } from "#lib/protocol/messages.ts";

export interface CopyOf {
  readonly kind: DocKind;
  readonly key: string;
  readonly generation: string;
  readonly userId: string;
}

const PROGRAM = "springline";

/** `springline/plan/<id>/<generation>/<user>` */
export const copyName = ({ kind, key, generation, userId }: CopyOf): string =>
  [PROGRAM, formatDocName({ kind, key }), ...[generation, userId].map(encodeURIComponent)].join("/");

/** What a browser's database holds; undefined for one that is none of our copies. */
export function parseCopyName(name: string): CopyOf | undefined {
  const [program, kind, key, generation, userId, ...more] = name.split("/");
  const doc = parseDocName(`${kind}/${key}`);
  if (program !== PROGRAM || !doc || !generation || !userId || more.length > 0) return undefined;
  return { ...doc, generation: decoded(generation), userId: decoded(userId) };
}

/** A name that somebody else made may be no encoded text at all. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
