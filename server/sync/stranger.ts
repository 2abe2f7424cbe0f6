/** A socket before the server knows who holds it: what it may say, and for how long. Traffic never extends the time. */
import type { Duplex } from "node:stream";
import type { RawData, WebSocket } from "ws";
import type { CloseName } from "#lib/protocol/close.ts";
import { bytesOf, closeSocket } from "./connection.ts";
import type { SessionInfo } from "./host.ts";
import type { Limits } from "./limits.ts";

interface Said {
  readonly data: Uint8Array;
  readonly isBinary: boolean;
}
export interface Known {
  readonly session: SessionInfo;
  /** What the page said while it was unknown, in order. */
  readonly said: readonly Said[];
}
export interface StrangerOptions {
  readonly ws: WebSocket;
  /** Bytes are counted here: half a frame costs memory too. */
  readonly socket: Duplex;
  readonly headBytes: number;
  readonly limits: Limits;
}

/** Resolves with the person, or with undefined when the socket has been closed instead. */
export function admitStranger(
  { ws, socket, headBytes, limits }: StrangerOptions,
  ask: () => Promise<SessionInfo | null>,
): Promise<Known | undefined> {
  return new Promise((resolve) => {
    const said: Said[] = [];
    let bytes = headBytes;
    const onData = (chunk: Buffer) => {
      bytes += chunk.length;
      if (bytes > limits.strangerBytes) end("tooMuch");
    };
    const onMessage = (data: RawData, isBinary: boolean) => {
      said.push({ data: bytesOf(data), isBinary });
      if (said.length > limits.strangerMessages) end("tooMuch");
    };
    const timer = setTimeout(() => end("tooSlowToSignIn"), limits.strangerMs);
    let over = false;
    const finish = (known: Known | undefined): boolean => {
      if (over) return false;
      over = true;
      clearTimeout(timer);
      socket.off("data", onData);
      ws.off("message", onMessage);
      ws.off("close", onClose);
      resolve(known);
      return true;
    };
    const end = (name: CloseName) => {
      if (finish(undefined)) closeSocket(ws, name, limits.closeMs);
    };
    const onClose = () => finish(undefined);
    socket.on("data", onData);
    ws.on("message", onMessage);
    ws.on("close", onClose);
    if (bytes > limits.strangerBytes) end("tooMuch");
    else ask().then((session) => (session ? finish({ session, said }) : end("notSignedIn")));
  });
}
