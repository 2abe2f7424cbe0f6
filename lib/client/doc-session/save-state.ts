/** Where a page's words are: the same answer, in the same words, for every kind of document. Pure. */

import type { ConnectionState } from "../connection-state.ts";
import { COPY_WORDS, type CopyState } from "../device-copy.ts";

/**
 * `opening`: nothing has been read yet, or the page has only what came with it and is still connecting.
 * `barred`: nothing could be read, since no socket opens at this address.
 * `saved`: on the server's disk. `sending`: on the way there.
 * `offline`: in this page and, where its copy works, on this device.
 * `storage-failing`: the server cannot write and keeps trying. `damaged`: it cannot write until its database is
 * restored.
 * `others-first`: this page holds a colleague's words that the server has lost, and its own depend on them; it keeps
 * trying.
 * `ended`: the server closed this page for good.
 */
export type SaveState =
  | "opening"
  | "barred"
  | "saved"
  | "sending"
  | "offline"
  | "storage-failing"
  | "damaged"
  | "others-first"
  | "ended";

/**
 * What this page has read: the document itself, and all that this device kept of it, which the server may not have
 * seen.
 */
export interface ReadSoFar {
  readonly document: boolean;
  readonly copy: boolean;
  /** The server answers over HTTP, but no socket opens. */
  readonly barred?: boolean;
}

export function saveStateOf(link: ConnectionState, read: ReadSoFar): SaveState {
  if (link.closed !== null) return "ended";
  if (link.storageFailing) return link.damaged ? "damaged" : "storage-failing";
  if (!read.document) return read.barred ? "barred" : "opening";
  if (link.othersFirst) return "others-first";
  if (!link.connected) return link.tried ? "offline" : "opening";
  return link.synced && link.waiting === 0 && read.copy ? "saved" : "sending";
}

export interface SaveView {
  readonly saveState: SaveState;
  /** Whether this person may write. */
  readonly rights: { readonly writes: boolean };
  readonly copy: CopyState;
  /** The server said that it was stopping for a moment. */
  readonly stopping?: boolean;
}

export function saveWords({ saveState, rights, copy, stopping }: SaveView): string {
  switch (saveState) {
    case "opening":
      return "opening";
    case "barred":
      return "no live connection";
    case "saved":
      return rights.writes ? "saved" : "up to date";
    case "sending":
      return rights.writes ? "sending" : "catching up";
    case "offline":
      if (stopping) return stoppingWords(rights.writes ? COPY_WORDS[copy] : null);
      return rights.writes ? `offline, ${COPY_WORDS[copy]}` : "offline";
    case "storage-failing":
      return `the server cannot save just now, trying again; ${COPY_WORDS[copy]}`;
    case "damaged":
      return `the server's database is damaged, so nothing is saved until it is restored; ${COPY_WORDS[copy]}`;
    case "others-first":
      return `the server has lost a colleague's words that yours depend on: yours are saved once that colleague has this open again; ${COPY_WORDS[copy]}`;
    case "ended":
      return "stopped";
  }
}

const stoppingWords = (kept: string | null): string =>
  `the server is stopping for a moment; this page comes back by itself${kept === null ? "" : `, your words are ${kept}`}`;
