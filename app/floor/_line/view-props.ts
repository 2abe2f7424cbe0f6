/** What every view of a class that is led elsewhere is given. */
import type { Card } from "#lib/card/schema.ts";
import type { FloorView } from "#lib/floor/view.ts";
import type { Followed } from "./use-followed.ts";

export interface ViewProps extends Followed {
  readonly card: Card;
  /** From how far this screen is read, metres. */
  readonly distanceM: number;
  /** Nobody confirms what is shown: nothing of it may look certain. */
  readonly unsure: boolean;
}

/** What goes on, by name. */
export function nowWords(view: FloorView): string {
  if (view.item) return view.item.name;
  if (view.phase === "done") return "The class is done";
  return view.phase === "closing" ? "Closing" : "Opening";
}
