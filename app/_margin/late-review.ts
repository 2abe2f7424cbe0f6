/** Few read a plan to sign it: what that takes comes after the page. */
import { loadLater } from "#lib/client/late.ts";

export const lateReview = loadLater(() => import("./review-dialog.tsx").then((module) => module.ReviewDialog));
