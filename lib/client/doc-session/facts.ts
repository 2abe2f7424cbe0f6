/** What every session knows at one moment, whatever the kind of its document. */
import type { CopyState } from "../device-copy.ts";
import type { Overtaken } from "./overtaken.ts";
import type { ColleaguePlace } from "./places.ts";
import type { SaveState } from "./save-state.ts";

interface SessionFacts {
  /** False until the document has been read from this device or the server. */
  readonly ready: boolean;
  /** The document was read, and this person may write in it. */
  readonly writes: boolean;
  readonly saveState: SaveState;
  /** The server answers and no socket ever opened here: what to do about it. Null while that is not so. */
  readonly noLive: string | null;
  readonly closeCode: number | null;
  readonly closeSentence: string | null;
  readonly places: readonly ColleaguePlace[];
  readonly selectedId: string | null;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** One sentence for the live region: what the last act did. */
  readonly said: string;
  /** What the last undo or redo left as it is, and why; null once the person does something else, or a moment later. */
  readonly notUndone: string | null;
  /** Whether this device has a copy of the words. */
  readonly copy: CopyState;
  /** What others set instead of this person's own while the server could not be heard. */
  readonly overtaken: readonly Overtaken[];
}

export type Snapshot<Derived, Heard> = Readonly<Derived & Heard & SessionFacts>;
