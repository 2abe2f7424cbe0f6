/** Whether a page's update may be applied, decided from its content before it is. */
import * as Y from "yjs";
import type { ProtectionOf } from "#lib/doc/protected-parts.ts";
import { decodeUpdate, tidyUpdate } from "#server/doc-log/updates.ts";
import { erases } from "./erasing.ts";
import { newSpeakers } from "./owners.ts";
import type { DocSize } from "./size.ts";
import { isTooHeavy } from "./weight.ts";

/**
 * `malformed`: not an update. `heavy`: applying it would keep everybody waiting. `erasing`: it would erase or replace what
 * the document keeps for good, or write what only the program may write. `forged`: it has new content under the client id
 * of another person's page. `full`: the document would exceed its bounds.
 */
export type UpdateFault = "malformed" | "heavy" | "erasing" | "forged" | "full";

export interface AcceptedUpdate {
  /** The update, with each deletion in it once. */
  readonly bytes: Uint8Array;
  /** The client ids under which it has new content. */
  readonly speakers: ReadonlySet<number>;
}

export interface UpdateJudge {
  readonly doc: Y.Doc;
  readonly holdOf: ProtectionOf;
  readonly size: DocSize;
  /** The person whose page a client id is, if known. */
  ownerOf(clientId: number): string | undefined;
}

export function judgeUpdate(court: UpdateJudge, userId: string, update: Uint8Array): AcceptedUpdate | UpdateFault {
  const tidy = tidyUpdate(update);
  if (!tidy) return "malformed";
  const { bytes, decoded } = tidy;
  if (isTooHeavy(court.doc, decoded)) return "heavy";
  if (erases(court.doc, decoded, court.holdOf)) return "erasing";
  // New content under the client id of another page would take the place of what that page writes next, which yjs would
  // then skip as already known. Content that the document already has does not matter.
  const speakers = newSpeakers(court.doc, decoded);
  const isForeign = (id: number) => (court.ownerOf(id) ?? userId) !== userId;
  if ([...speakers].some(isForeign)) return "forged";
  if (court.size.overflows(decoded)) return "full";
  court.size.grew(decoded);
  return { bytes, speakers };
}

/** A clock later than any content of a client id. */
const NEVER = 2 ** 32;

/** An update without the content under the client ids of other people's pages. */
export function ownPart(court: UpdateJudge, userId: string, update: Uint8Array): Uint8Array {
  const clients = new Set(decodeUpdate(update)?.structs.map(({ id }) => id.client));
  const foreign = [...clients].filter((id) => (court.ownerOf(id) ?? userId) !== userId);
  return Y.diffUpdate(update, Y.encodeStateVector(new Map(foreign.map((id) => [id, NEVER]))));
}
