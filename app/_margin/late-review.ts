/** Fetched after the page: few people read a plan to sign it. */
import { late } from "#lib/client/late.ts";

export const lateReview = late(() => import("./review-dialog.tsx").then((module) => module.ReviewDialog));
