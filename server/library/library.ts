/** The studio's library of moves as a whole: read by everybody who writes plans, maintained by leads and managers. */
import * as z from "zod";
import { readMoveRow } from "#db/repos/move-repo.ts";
import { RESERVED_IDS } from "#lib/library/move-id.ts";
import { sameData } from "#lib/plan/same-data.ts";
import { ID_PATTERN, moveSchema } from "#lib/plan/schema.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { type Moves, moveLibrary } from "#server/studio-data/move-library.ts";
import { badMoveId, movesChanged } from "./refusals.ts";
import { changeLibrary, storeMove } from "./store-move.ts";

const moveId = z.string().regex(ID_PATTERN, "This is not a valid id for a move.");
/** Several moves at once, by id, as from a plan file or another studio's library. */
export const putMovesSchema = z.strictObject({
  moves: z.record(moveId, moveSchema),
  /** The `updatedAt` of each move as the sender saw it; null if there was none. Left out: nothing is compared. */
  seen: z.record(moveId, z.number().nullable()).optional(),
});

/** `archived` has the ids of moves that are not offered any more; left out when there are none. Errors: 403 no-right. */
export function readLibrary(app: Springline, actor: Actor): Result<{ moves: Moves; archived?: readonly string[] }> {
  if (!can(actor, "library.read")) return NO_RIGHT;
  const { moves, archived } = moveLibrary(app.db);
  return ok({ moves, ...(archived.length === 0 ? {} : { archived }) });
}

/**
 * Adds moves, or replaces those with the same id, all or none; archived moves stay archived. Open plan pages are told.
 * Errors: 403 no-right, 409 moves-changed (with `details.ids`) when somebody was faster, 422 bad-id.
 */
export function putMoves(
  app: Springline,
  actor: Actor,
  moves: Moves,
  seen: Readonly<Record<string, number | null>> = {},
): Result<{ stored: number }> {
  if (actor?.kind !== "person" || !can(actor, "library.write")) return NO_RIGHT;
  const entries = Object.entries(moves);
  const bad = entries.find(([id]) => !ID_PATTERN.test(id) || RESERVED_IDS.has(id));
  if (bad) return badMoveId(bad[0]);
  return changeLibrary(app, () => {
    const other = Object.entries(seen).flatMap(([id, at]) =>
      (readMoveRow(app.db, id)?.updatedAt ?? null) === at ? [] : [id],
    );
    if (other.length > 0) return movesChanged(other);
    for (const [id, move] of entries) {
      const had = readMoveRow(app.db, id);
      if (!had || !sameData(had.move, move)) storeMove(app, actor, { id, move, kind: had ? "changed" : "added" });
    }
    return ok({ stored: entries.length });
  });
}
