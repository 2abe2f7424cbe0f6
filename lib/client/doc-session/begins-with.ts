/** A document that came with its page: there before any socket, as a copy of this device would be. */
import * as Y from "yjs";
import { docVersion } from "#lib/doc/layout.ts";
import type { Versions } from "./kinds.ts";

export interface DocAtStart {
  /** A yjs update that holds all of it. */
  readonly bytes: Uint8Array;
  readonly version: number;
}

/**
 * Reads it into `doc`, to be called before anything listens: it is nobody's act and nothing to send. False, with nothing read,
 * where there is none or it is not of this program's version, which is the server's to deal with.
 */
export function beginsWith(doc: Y.Doc, start: DocAtStart | undefined, { docVersion: own }: Versions): boolean {
  if (start?.version !== own) return false;
  Y.applyUpdate(doc, start.bytes);
  return docVersion(doc) === own;
}
