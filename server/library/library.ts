/** The studio's library of moves: read by everybody who writes plans, changed by leads and managers. */
import { z } from "zod";
import { libraryState, putMove as storeMove } from "#db/repos/move-repo.ts";
import { ID_PATTERN, moveSchema } from "#lib/plan/schema.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { fail, NO_RIGHT, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { announceStudio } from "#server/studio/announce-studio.ts";
import { libraryMoves, type Moves } from "./library-moves.ts";

export const putMoveSchema = moveSchema;
/** Several moves at once, by id: a library carried over from a plan file or another studio. */
export const putMovesSchema = z.strictObject({ moves: z.record(z.string().regex(ID_PATTERN), moveSchema) });

/** Errors: 403 no-right. */
export function readLibrary(app: Springline, actor: Actor): Result<{ moves: Moves }> {
  return can(actor, "library.read") ? ok({ moves: libraryMoves(app.db) }) : NO_RIGHT;
}

/** Adds moves or replaces those of the same id, all or none; open plan pages hear of it. Errors: 403 no-right, 422 bad-id. */
export function putMoves(app: Springline, actor: Actor, moves: Moves): Result<{ stored: number }> {
  if (!can(actor, "library.write")) return NO_RIGHT;
  const entries = Object.entries(moves);
  const bad = entries.find(([id]) => !ID_PATTERN.test(id));
  if (bad) return fail(422, "bad-id", `${bad[0]} cannot be the id of a move: small letters, digits and hyphens.`);
  app.db.raw
    .transaction(() => {
      // Two changes in one millisecond must still look like two: the time of the last change names the library's state.
      const at = Math.max(app.now(), libraryState(app.db).at + 1);
      for (const [id, move] of entries) storeMove(app.db, id, move, at);
    })
    .immediate();
  announceStudio(app);
  return ok({ stored: entries.length });
}
