/** All that a session needs of the machine it runs on. `browser-edge.ts` is the browser's; tests have one of their own. */
import type * as Y from "yjs";
import type { CopyState } from "../device-copy.ts";

/** Undoes what it was given for. */
export type Unsubscribe = () => void;

/** This device's copy of one document. */
export interface KeptCopy {
  readonly state: CopyState;
  /** All that was kept has been read, or there is nothing to be read any more. */
  readonly isRead: boolean;
  /** Small values kept beside the words, by name: what earlier pages left here. Complete once `isRead`. */
  readonly notes: ReadonlyMap<string, unknown>;
  /** Keeps one, or lets it go where the value is undefined. Values are such as the browser can copy. */
  keepNote(name: string, value: unknown): void;
  /** Keeps the document anew, as it is now, in place of what was kept: it was changed without an update. */
  rewrite(): void;
  /** Lets go of what is kept, for good. */
  clear(): Promise<void>;
  /** Closes it; what is kept stays. */
  close(): void;
}

export interface Edge {
  /** Where the server is: `wss://studio.example`. */
  readonly origin: string;
  /** Only outside browsers. */
  readonly WebSocket?: typeof WebSocket;
  /** Opens the copy of that name and reads it into `doc`. `onChange`: its state changed, or all of it was read. */
  openCopy(name: string, doc: Y.Doc, onChange: () => void): KeptCopy;
  /** Runs once before the next picture is drawn; where no picture is drawn, soon. */
  frame(run: () => void): Unsubscribe;
  /** Runs once after `ms`. */
  later(run: () => void, ms: number): Unsubscribe;
  /** The device says that it gained or lost its network. */
  onNetwork(heard: () => void): Unsubscribe;
  /** The page is seen again after it was hidden. */
  onShown(heard: () => void): Unsubscribe;
  /** Asks the page's address over HTTP why no socket opens: a sentence, or null when it does not answer. May reject. */
  askAddress(): Promise<string | null>;
  /** Opens the page afresh. */
  reload(): void;
}
