/** One page in one room, as the room sees it. `Connection` implements it over a socket. */
import type { CloseName } from "#lib/protocol/close.ts";
import type { News } from "#lib/protocol/messages.ts";
import type { DocAccess, SessionInfo } from "./host.ts";

export interface PageConnection {
  readonly session: SessionInfo;
  readonly access: DocAccess;
  /** Document messages of this page that are in the room; all of them are on disk when the room is clean. */
  readonly counted: number;
  /** When the oldest of its messages arrived since this was last asked, by `performance.now()`; undefined for none. */
  takeArrival(): number | undefined;
  /** Gives the room what the page sent in this turn. */
  takeHeard(): void;
  /** New rights apply from the very next message. */
  setAccess(access: DocAccess): void;
  send(frame: Uint8Array): void;
  sendNews(news: News): void;
  /** A sign of life for pages that give up on a silent server. */
  murmur(): void;
  /** Pings, and drops a socket that did not answer the last ping. */
  ping(): void;
  /** Ends it from this side. The room is told at once, the page by the close code. */
  close(name: CloseName): void;
}
