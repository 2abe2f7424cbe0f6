/** Pasted readings as rows of the form. Pure. */
import type { PastedReadings } from "#lib/springs/pasted-readings.ts";
import { MOST_ROWS, type SheetDraft } from "./sheet-draft.ts";

type Units = Pick<SheetDraft, "travelUnit" | "forceUnit">;

/** The lines that are readings; `chosen` counts where the text tells no unit. */
export function pastedDraft(pasted: PastedReadings, chosen: Units): SheetDraft {
  const good = pasted.rows.filter(({ say }) => say === null).slice(0, MOST_ROWS);
  return {
    travelUnit: pasted.travelUnit ?? chosen.travelUnit,
    forceUnit: pasted.forceUnit ?? chosen.forceUnit,
    rows: good.map(({ travel, force }, row) => ({ row, travel, force, leftOut: false })),
  };
}
