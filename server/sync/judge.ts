/** Whether a page's update may be applied, told from what it holds before it touches the document. */
import * as Y from "yjs";
import type { ProtectionOf } from "#lib/doc/protected-parts.ts";
import { erases } from "./erasing.ts";
import { newSpeakers } from "./owners.ts";
import type { DocSize } from "./size.ts";
import { decodeUpdate, tidyUpdate } from "./updates.ts";
import { isTooHeavy } from "./weight.ts";

/**
 * `malformed`: no update. `heavy`: applying it would keep everybody waiting. `erasing`: it would erase or replace what the
 * document keeps for good, or write what is the program's. `forged`: it brings words under the client id of another
 * person's page. `full`: the document would grow beyond its bounds.
 */
export type Refusal = "malformed" | "heavy" | "erasing" | "forged" | "full";

export interface Judged {
  /** The update, each deletion in it said once. */
  readonly bytes: Uint8Array;
  /** Client ids under which it brings new words. */
  readonly speakers: ReadonlySet<number>;
}

export interface Court {
  readonly doc: Y.Doc;
  readonly holdOf: ProtectionOf;
  readonly size: DocSize;
  /** Whose page a client id is, where that is known. */
  ownerOf(clientId: number): string | undefined;
}

export function judge(court: Court, userId: string, update: Uint8Array): Judged | Refusal {
  const tidy = tidyUpdate(update);
  if (!tidy) return "malformed";
  const { bytes, decoded } = tidy;
  if (isTooHeavy(court.doc, decoded)) return "heavy";
  if (erases(court.doc, decoded, court.holdOf)) return "erasing";
  // New words under the client id of somebody else's page would take the place of what that page says next, which yjs then
  // passes over as known. Whoever only offers again what is known says nothing new.
  const speakers = newSpeakers(court.doc, decoded);
  const isForeign = (id: number) => (court.ownerOf(id) ?? userId) !== userId;
  if ([...speakers].some(isForeign)) return "forged";
  if (court.size.overflows(decoded)) return "full";
  court.size.grew(decoded);
  return { bytes, speakers };
}

/** Later than any word under a client id. */
const NEVER = 2 ** 32;

/** An update without the words under the client ids of other people's pages. */
export function ownPart(court: Court, userId: string, update: Uint8Array): Uint8Array {
  const clients = new Set(decodeUpdate(update)?.structs.map(({ id }) => id.client));
  const foreign = [...clients].filter((id) => (court.ownerOf(id) ?? userId) !== userId);
  return Y.diffUpdate(update, Y.encodeStateVector(new Map(foreign.map((id) => [id, NEVER]))));
}
