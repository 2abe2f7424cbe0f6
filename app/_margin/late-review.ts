/** Few read a plan to sign it: what that takes comes after the page. */
import { late } from "#lib/client/late.ts";

export const lateReview = late(() => import("./review-dialog.tsx").then((module) => module.ReviewDialog));
