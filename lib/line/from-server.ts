/** What the server says to a screen on `/floor/line`: one JSON object a text frame. */
import type { RoomLine } from "./line.ts";
import type { LineRefusal } from "./messages.ts";

export type FromServer =
  /** `epoch` names this run of the server: another one has another clock. `you`: the device's id. */
  | { readonly t: "welcome"; readonly epoch: string; readonly you: string }
  | { readonly t: "time"; readonly t1: number; readonly t2: number; readonly t3: number }
  | { readonly t: "line"; readonly line: RoomLine }
  | { readonly t: "refused"; readonly why: LineRefusal }
  /** Editions were signed or withdrawn since another mark was told: time to fetch the cards again. */
  | { readonly t: "cards"; readonly mark: string }
  /** Nothing happened, and the line is there. */
  | { readonly t: "here" };
