/**
 * Everything a session needs from the machine it runs on. `browser-edge.ts` is the browser's; tests bring their own.
 */
import type * as Y from "yjs";
import type { CopyState } from "../device-copy.ts";

/** Ends what it was returned for. */
export type Unsubscribe = () => void;

/** This device's copy of one document. */
export interface KeptCopy {
  readonly state: CopyState;
  /** True once all that was kept has been read, or there is nothing left to read. */
  readonly isRead: boolean;
  /** Small values kept beside the words, by name, from earlier pages. Complete once `isRead`. */
  readonly notes: ReadonlyMap<string, unknown>;
  /** Keeps a value, or removes it where it is undefined. Values must be structured-cloneable. */
  keepNote(name: string, value: unknown): void;
  /** Replaces what was kept with the document as it is now, for when it was changed without an update. */
  rewrite(): void;
  /** Deletes what is kept, for good. */
  clear(): Promise<void>;
  /** Closes it; what is kept stays. */
  close(): void;
}

export interface Edge {
  /** Where the server is: `wss://studio.example`. */
  readonly origin: string;
  /** Needed only outside browsers. */
  readonly WebSocket?: typeof WebSocket;
  /**
   * Opens the copy of that name and reads it into `doc`. `onChange` is called when its state changes or all of it has
   * been read.
   */
  openCopy(name: string, doc: Y.Doc, onChange: () => void): KeptCopy;
  /** Runs once before the next frame is drawn, or soon where none is drawn. */
  frame(run: () => void): Unsubscribe;
  /** ms; only differences count. */
  now(): number;
  /** Runs once after `ms`. */
  later(run: () => void, ms: number): Unsubscribe;
  /** The device reports that it gained or lost its network. */
  onNetwork(heard: () => void): Unsubscribe;
  /** The page is visible again after it was hidden. */
  onShown(heard: () => void): Unsubscribe;
  /** Asks the page's address over HTTP why no socket opens: a sentence, or null when it does not answer. May reject. */
  askAddress(): Promise<string | null>;
  /** The server has named its build. Left out: nobody asks. */
  heardBuild?(build: string): void;
  /** Reloads the page. */
  reload(): void;
}
