/** What a plan session asks of the socket. */
import type { Awareness } from "y-protocols/awareness";
import type * as Y from "yjs";
import type { News } from "#lib/protocol/messages.ts";
import type { PlanPageProps } from "./session-types.ts";

export interface LinkState {
  readonly connected: boolean;
  /** The server's document has been read on this connection. */
  readonly synced: boolean;
  /** Messages of this page that are not yet on the server's disk. */
  readonly waiting: number;
  readonly storageFailing: boolean;
  /** Code of a final close; null while the link lives or tries again. */
  readonly closed: number | null;
}

export interface LinkListener {
  readonly onNews: (news: News) => void;
  readonly onState: (state: LinkState) => void;
}

export interface Link {
  readonly awareness: Awareness;
  reconnect(): void;
  end(): void;
}

export declare function openLink(props: PlanPageProps, doc: Y.Doc, listener: LinkListener): Link;
