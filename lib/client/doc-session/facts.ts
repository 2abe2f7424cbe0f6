/** What every session knows at one moment, for any kind of document. */
import type { CopyState } from "../device-copy.ts";
import type { Overtaken } from "./overtaken.ts";
import type { ColleaguePlace } from "./places.ts";
import type { SaveState } from "./save-state.ts";

interface SessionFacts {
  /** False until the document has been read from this device or the server. */
  readonly ready: boolean;
  /** The document has been read, and this person may write in it. */
  readonly writes: boolean;
  readonly saveState: SaveState;
  /** The server said that it was stopping for a moment, and is not back yet. */
  readonly stopping: boolean;
  /** What to do when the server answers but no socket ever opens here; null otherwise. */
  readonly noLive: string | null;
  readonly closeCode: number | null;
  readonly closeSentence: string | null;
  readonly places: readonly ColleaguePlace[];
  readonly selectedId: string | null;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** One sentence for the live region about the last act. */
  readonly said: string;
  /**
   * What the last undo or redo could not change, and why; null once the person does something else, or after a moment.
   */
  readonly notUndone: string | null;
  /** Whether this device has a copy of the words. */
  readonly copy: CopyState;
  /** Values of this person's that others have replaced unseen. */
  readonly overtaken: readonly Overtaken[];
}

export type Snapshot<Derived, Heard> = Readonly<Derived & Heard & SessionFacts>;
