/** Plans and moves that have the words of `?q=`, in the person's turn: it is asked for as one types. */
import { findByWords } from "#server/find/find-words.ts";
import { guarded } from "#server/http/respond.ts";

export const GET = guarded({ costly: true }, ({ app, actor, request }) =>
  findByWords(app, actor, new URL(request.url).searchParams.get("q") ?? ""),
);
