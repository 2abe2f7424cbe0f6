/** Fetched after the page: the field for a comment, with what it offers. */
import { loadLater } from "#lib/client/late.ts";

export const lateComment = loadLater(() => import("./comment-form.tsx").then((module) => module.CommentForm));
