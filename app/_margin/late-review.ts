/** Fetched after the page: few people read a plan to sign it. */
import { loadLater } from "#lib/client/late.ts";

export const lateReview = loadLater(() => import("./review-dialog.tsx").then((module) => module.ReviewDialog));
