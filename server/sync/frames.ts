/** The frames that the server sends: those of the y-websocket protocol, and news. Each is encoded once and shared. */
import * as encoding from "lib0/encoding";
import { messageYjsSyncStep1, messageYjsSyncStep2, messageYjsUpdate } from "y-protocols/sync";
import * as Y from "yjs";
import { MESSAGE, type News } from "#lib/protocol/messages.ts";

export type Frame = Uint8Array<ArrayBuffer>;

function syncFrame(kind: number, body: Uint8Array): Frame {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, MESSAGE.sync);
  encoding.writeVarUint(encoder, kind);
  encoding.writeVarUint8Array(encoder, body);
  return encoding.toUint8Array(encoder);
}

/** Sync step 1: what the server has, so that the page sends the rest. */
export const step1Frame = (doc: Y.Doc): Frame => syncFrame(messageYjsSyncStep1, Y.encodeStateVector(doc));

/** Sync step 2: what a page with this state vector lacks. Throws on a malformed vector. */
export const step2Frame = (doc: Y.Doc, stateVector: Uint8Array): Frame =>
  syncFrame(messageYjsSyncStep2, Y.encodeStateAsUpdate(doc, stateVector));

/** The vector of a page that has nothing. */
export const isEmptyVector = (stateVector: Uint8Array): boolean => stateVector.length === 1 && stateVector[0] === 0;

export const updateFrame = (update: Uint8Array): Frame => syncFrame(messageYjsUpdate, update);

/** The presence of one client id, as in an awareness update. */
export interface PresenceEntry {
  readonly clientId: number;
  readonly clock: number;
  /** JSON of the state; "null" for somebody who has left. */
  readonly state: string;
}

export function awarenessFrame(entries: readonly PresenceEntry[]): Frame {
  const body = encoding.createEncoder();
  encoding.writeVarUint(body, entries.length);
  for (const entry of entries) {
    encoding.writeVarUint(body, entry.clientId);
    encoding.writeVarUint(body, entry.clock);
    encoding.writeVarString(body, entry.state);
  }
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, MESSAGE.awareness);
  encoding.writeVarUint8Array(encoder, encoding.toUint8Array(body));
  return encoding.toUint8Array(encoder);
}

/** An empty awareness update: a sign of life that every y-websocket page understands. */
export const MURMUR_FRAME: Frame = awarenessFrame([]);

export function newsFrame(news: News): Frame {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, MESSAGE.news);
  encoding.writeVarString(encoder, JSON.stringify(news));
  return encoding.toUint8Array(encoder);
}
