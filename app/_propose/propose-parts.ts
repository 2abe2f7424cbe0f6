/** Fetched after the page in one go. */
import { OrderCopyDialog } from "./order-copy-dialog.tsx";
import { PlateCopyDialog } from "./plate-copy-dialog.tsx";
import { PlateProposals } from "./plate-proposals.tsx";
import { ProposalsDialog } from "./proposals-dialog.tsx";

export const PROPOSE_PARTS = {
  onPlate: PlateProposals,
  plateCopy: PlateCopyDialog,
  orderCopy: OrderCopyDialog,
  all: ProposalsDialog,
};
