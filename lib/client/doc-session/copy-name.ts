/**
 * The names of the copies that a device keeps: one for each document, history and person, so that nobody reads somebody
 * else's words and no copy is merged into a history that it does not continue. Built and parsed only here.
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

/** The parts of a database name; undefined where it is not one of our copies. */
export function parseCopyName(name: string): CopyOf | undefined {
  const [program, kind, key, generation, userId, ...more] = name.split("/");
  const doc = parseDocName(`${kind}/${key}`);
  if (program !== PROGRAM || !doc || !generation || !userId || more.length > 0) return undefined;
  return { ...doc, generation: decoded(generation), userId: decoded(userId) };
}

/** A name from elsewhere may not be valid encoded text. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
