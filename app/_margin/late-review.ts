/** Fetched after the page: few people read a plan to return or sign it. */
import { loadLater } from "#lib/client/late.ts";

export const lateReview = loadLater(() => import("./review-dialog.tsx").then((module) => module.ReviewDialog));
export const lateReturn = loadLater(() => import("./hand-dialogs.tsx").then((module) => module.HandBackDialog));
export const lateOffer = loadLater(() => import("./hand-dialogs.tsx").then((module) => module.HandInDialog));
export const lateTakeBack = loadLater(() => import("./take-back-dialog.tsx").then((module) => module.TakeBackDialog));
export const lateStepTold = loadLater(() => import("./step-told.tsx").then((module) => module.StepTold));
export const lateReader = loadLater(() => import("./reader.tsx").then((module) => module.Reader));
