/** What the server sends to a screen on `/floor/line`: one JSON object per text frame. */
import type { RoomLine } from "./line.ts";
import type { LineRefusal } from "./messages.ts";

export type FromServer =
  /** `epoch` identifies this run of the server, since its clock starts anew. `you`: the device's id. */
  | { readonly t: "welcome"; readonly epoch: string; readonly you: string }
  | { readonly t: "time"; readonly t1: number; readonly t2: number; readonly t3: number }
  | { readonly t: "line"; readonly line: RoomLine }
  | { readonly t: "refused"; readonly why: LineRefusal }
  /** A mark other than the last one: editions were signed or withdrawn, so fetch the cards again. */
  | { readonly t: "cards"; readonly mark: string }
  /** Nothing has happened; the line is alive. */
  | { readonly t: "here" };
