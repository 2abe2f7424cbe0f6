/** What every view of a class that is led elsewhere is given. */
import type { Card } from "#lib/card/schema.ts";
import type { TypeSizes } from "#lib/floor/legibility.ts";
import type { FloorView } from "#lib/floor/view.ts";
import type { Followed } from "./use-followed.ts";

export interface ViewProps extends Followed {
  readonly card: Card;
  /** Ladders of type for this screen's reading distance. */
  readonly sizes: TypeSizes;
}

/** What goes on, by name. */
export function nowWords(view: FloorView): string {
  if (view.item) return view.item.name;
  if (view.phase === "done") return "The class is done";
  return view.phase === "closing" ? "Closing" : "Opening";
}
