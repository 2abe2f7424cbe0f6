/** Fetched after the page in one go. */
import { HandBackDialog, HandInDialog } from "./hand-dialogs.tsx";
import { Reader } from "./reader.tsx";
import { ReviewDialog } from "./review-dialog.tsx";
import { StepTold } from "./step-told.tsx";
import { TakeBackDialog } from "./take-back-dialog.tsx";

export const REVIEW_PARTS = {
  review: ReviewDialog,
  handBack: HandBackDialog,
  offer: HandInDialog,
  takeBack: TakeBackDialog,
  told: StepTold,
  reader: Reader,
};
