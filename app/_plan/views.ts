/** Fetched after the page in one go: the views and dialogs of a plan. One by one they come in so many files that asking takes longer than fetching. */
import { FitDialog } from "#app/_fit/fit-dialog.tsx";
import { WholeClass } from "#app/_lanes/whole-class.tsx";
import { OrderDialog } from "#app/_order/order-dialog.tsx";
import { LegendDialog } from "#app/_parts/legend.tsx";
import { PasteDialog } from "#app/_paste/paste-dialog.tsx";
import { ReadThroughView } from "#app/_read/read-through-view.tsx";
import { RehearsalsDialog } from "#app/_rehearsal/rehearsals-dialog.tsx";
import { RoundsViewPart } from "#app/_rounds/rounds-view.tsx";

export const VIEWS = {
  fit: FitDialog,
  wholeClass: WholeClass,
  readThrough: ReadThroughView,
  order: OrderDialog,
  paste: PasteDialog,
  rehearsals: RehearsalsDialog,
  rounds: RoundsViewPart,
  legend: LegendDialog,
};
