/** Fetched after the page: few people read a plan to return or sign it. */
import { loadLaterOf } from "#lib/client/late.ts";

const part = loadLaterOf(() => import("./review-parts.ts").then(({ REVIEW_PARTS }) => REVIEW_PARTS));

export const lateReview = part("review");
export const lateReturn = part("handBack");
export const lateOffer = part("offer");
export const lateTakeBack = part("takeBack");
export const lateStepTold = part("told");
export const lateReader = part("reader");
