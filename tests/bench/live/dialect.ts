/**
 * How to talk to each measured server. The stock server and this one speak the y-websocket protocol; Hocuspocus names
 * the document in each message and expects a token first, whether or not it checks it.
 */
import * as encoding from "lib0/encoding";
import type { Kind } from "./servers.ts";

const SYNC = 0;
const HOCUSPOCUS_SYNC_REPLY = 4;
const HOCUSPOCUS_AUTH = 2;
const HOCUSPOCUS_TOKEN = 0;

/** The sync protocol's own message kinds (y-protocols/sync). */
export const STEP_1 = 0;
export const STEP_2 = 1;
export const UPDATE = 2;

export interface Dialect {
  /** The first message; none for a server that identifies pages by cookies. */
  readonly hello?: Uint8Array;
  frame(kind: number, body: Uint8Array): Uint8Array;
  /** Index of the message kind in a sync message; undefined for any other message. */
  syncAt(data: Uint8Array): number | undefined;
}

function framed(head: (encoder: encoding.Encoder) => void, write: (encoder: encoding.Encoder) => void): Uint8Array {
  const encoder = encoding.createEncoder();
  head(encoder);
  write(encoder);
  return encoding.toUint8Array(encoder);
}

export function dialectOf(kind: Kind, key: string): Dialect {
  const named = kind === "hocuspocus";
  const head = (encoder: encoding.Encoder) => {
    if (named) encoding.writeVarString(encoder, key);
  };
  const start = framed(head, () => undefined).length;
  const hello = framed(head, (encoder) => {
    for (const part of [HOCUSPOCUS_AUTH, HOCUSPOCUS_TOKEN]) encoding.writeVarUint(encoder, part);
    for (const part of ["token", "4.7.0"]) encoding.writeVarString(encoder, part);
  });
  return {
    ...(named ? { hello } : {}),
    frame: (kind, body) =>
      framed(head, (encoder) => {
        for (const part of [SYNC, kind]) encoding.writeVarUint(encoder, part);
        encoding.writeVarUint8Array(encoder, body);
      }),
    syncAt: (data) =>
      data[start] === SYNC || (named && data[start] === HOCUSPOCUS_SYNC_REPLY) ? start + 1 : undefined,
  };
}
