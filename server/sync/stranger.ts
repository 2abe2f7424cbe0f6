/** A page's socket while its session is being looked up. */
import type { RawData } from "ws";
import type { CloseName } from "#lib/protocol/close.ts";
import { bytesOf } from "#server/sockets/close-socket.ts";
import { hearUnknown, type UnknownSocket } from "#server/sockets/hear-unknown.ts";
import { closeSocket } from "./connection.ts";
import type { SessionInfo } from "./host.ts";
import type { Limits } from "./limits.ts";

interface Message {
  readonly data: Uint8Array;
  readonly isBinary: boolean;
}
export interface KnownCaller {
  readonly session: SessionInfo;
  /** What the page sent while it was unknown, in order. */
  readonly sent: readonly Message[];
}

/** Resolves with the session, or with undefined when the socket has been closed instead. */
export function admitStranger(
  caller: UnknownSocket,
  limits: Limits,
  ask: () => Promise<SessionInfo | null>,
): Promise<KnownCaller | undefined> {
  return new Promise((resolve) => {
    const sent: Message[] = [];
    let over = false;
    const finish = (known: KnownCaller | undefined): boolean => {
      if (over) return false;
      over = true;
      stop();
      resolve(known);
      return true;
    };
    const end = (name: CloseName) => {
      if (finish(undefined)) closeSocket(caller.ws, name, limits.closeMs);
    };
    const stop = hearUnknown(caller, limits, {
      message(data: RawData, isBinary) {
        sent.push({ data: bytesOf(data), isBinary });
        if (sent.length > limits.strangerMessages) end("tooMuch");
      },
      tooMuch: () => end("tooMuch"),
      tooSlow: () => end("tooSlowToSignIn"),
      gone: () => finish(undefined),
    });
    if (caller.headBytes > limits.strangerBytes) end("tooMuch");
    else ask().then((session) => (session ? finish({ session, sent }) : end("notSignedIn")));
  });
}
