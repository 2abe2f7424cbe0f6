/** Archives a move of the library, or puts it back. An archived move is not offered any more; plans that use it keep it. */
import * as z from "zod";
import { readMoveRow, setMoveArchived } from "#db/repos/move-repo.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import type { StoredMove } from "./add-move.ts";
import { moveChanged } from "./change-move.ts";
import { freeName } from "./check-move.ts";
import { changeLibrary, nextChangeAt, record } from "./store-move.ts";

export const moveArchiveSchema = z.strictObject({
  archived: z.boolean(),
  /** `updatedAt` of the move as the person saw it. */
  base: z.number(),
});

/** Errors: 403 no-right, 404, 409 move-changed, 409 name-taken when another move has its name by now. */
export function archiveMove(
  app: Springline,
  actor: Actor,
  id: string,
  { archived, base }: z.infer<typeof moveArchiveSchema>,
): Result<StoredMove> {
  if (actor?.kind !== "person" || !can(actor, "library.write")) return NO_RIGHT;
  return changeLibrary(app, () => {
    const row = readMoveRow(app.db, id);
    if (!row) return NOT_FOUND;
    if ((row.archivedAt !== null) === archived) return ok({ id, updatedAt: row.updatedAt });
    if (row.updatedAt !== base) return moveChanged(app, row);
    const free = archived ? ok(row.move) : freeName(app.db, row.move, id);
    if (!free.ok) return free;
    const at = nextChangeAt(app);
    record(app, actor, { id, move: row.move, kind: archived ? "archived" : "restored" }, at);
    setMoveArchived(app.db, id, archived ? at : null, at);
    return ok({ id, updatedAt: at });
  });
}
