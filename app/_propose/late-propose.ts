/** Fetched after the page: few plates have a proposal, and few people write one. */
import { loadLater } from "#lib/client/late.ts";

export const latePlateProposals = loadLater(() =>
  import("./plate-proposals.tsx").then((module) => module.PlateProposals),
);
export const latePlateCopy = loadLater(() =>
  import("./plate-copy-dialog.tsx").then((module) => module.PlateCopyDialog),
);
export const lateOrderCopy = loadLater(() =>
  import("./order-copy-dialog.tsx").then((module) => module.OrderCopyDialog),
);
export const lateProposals = loadLater(() => import("./proposals-dialog.tsx").then((module) => module.ProposalsDialog));
