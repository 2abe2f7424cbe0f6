/** The page's side of the socket's frames: recognising document messages, reading news, sending its own presence. */
import * as decoding from "lib0/decoding";
import * as encoding from "lib0/encoding";
import { type Awareness, encodeAwarenessUpdate } from "y-protocols/awareness";
import { messageYjsSyncStep2, messageYjsUpdate } from "y-protocols/sync";
import { MESSAGE, type News } from "#lib/protocol/messages.ts";

/** Which of the two messages that the server counts a frame is; null for any other frame. */
export function documentFrameKind(frame: Uint8Array): "step2" | "update" | null {
  if (frame[0] !== MESSAGE.sync) return null;
  if (frame[1] === messageYjsSyncStep2) return "step2";
  return frame[1] === messageYjsUpdate ? "update" : null;
}

/** y-websocket's request for presence, which the server always answers: asks for any sign of life. */
export const ASK_FRAME = new Uint8Array([MESSAGE.queryAwareness]);

/** One piece of news, or undefined for a form this page is too old to know. */
export function parseNews(decoder: decoding.Decoder): News | undefined {
  const value: unknown = JSON.parse(decoding.readVarString(decoder));
  return typeof value === "object" && value !== null && "t" in value ? (value as News) : undefined;
}

/** An awareness frame about this page alone. */
export function ownAwarenessFrame(awareness: Awareness): Uint8Array<ArrayBuffer> {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, MESSAGE.awareness);
  encoding.writeVarUint8Array(encoder, encodeAwarenessUpdate(awareness, [awareness.clientID]));
  return encoding.toUint8Array(encoder);
}
