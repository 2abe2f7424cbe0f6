/** Plans and moves that have the words of `?q=`, in the person's turn: it is asked for as one types. */
import { arrives, refuseOvertaken } from "#server/find/few-at-once.ts";
import { findByWords } from "#server/find/find-words.ts";
import { guarded } from "#server/http/respond.ts";

export const GET = guarded(
  { costly: true, first: arrives },
  (call) =>
    refuseOvertaken(call) ?? findByWords(call.app, call.actor, new URL(call.request.url).searchParams.get("q") ?? ""),
);
