/**
 * Changes one move, starting from the state that its editor saw. If somebody else was faster it is refused with the current
 * state, so that the page can merge the two. Signed editions do not change.
 */
import * as z from "zod";
import { type MoveRow, readMoveRow } from "#db/repos/move-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { sameData } from "#lib/plan/same-data.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import type { StoredMove } from "./add-move.ts";
import { checkMove } from "./check-move.ts";
import { lastChangeBy } from "./read-move.ts";
import { type MoveNow, moveChangedBy } from "./refusals.ts";
import { changeLibrary, storeMove } from "./store-move.ts";

export const moveChangeSchema = z.strictObject({
  move: z.unknown(),
  /** `updatedAt` of the move that the change started from. */
  base: z.number(),
});

/**
 * Does nothing when the move is already so. Errors: 403 no-right, 404, 409 move-changed (`details`: MoveNow), 422 bad-move
 * and 409 name-taken with `details.faults`.
 */
export function changeInLibrary(
  app: Springline,
  actor: Actor,
  id: string,
  { move, base }: z.infer<typeof moveChangeSchema>,
): Result<StoredMove> {
  if (actor?.kind !== "person" || !can(actor, "library.write")) return NO_RIGHT;
  return changeLibrary(app, () => {
    const row = readMoveRow(app.db, id);
    if (!row) return NOT_FOUND;
    // Sent again because the first answer was lost, or two people made the same change.
    if (sameData(move, row.move)) return ok({ id, updatedAt: row.updatedAt });
    if (row.updatedAt !== base) return moveChanged(app, row);
    const checked = checkMove(app.db, move, id);
    if (!checked.ok) return checked;
    return ok({ id, updatedAt: storeMove(app, actor, { id, move: checked.value, kind: "changed" }) });
  });
}

/** 409 move-changed, with the move as it is now and who changed it. */
export function moveChanged(app: Pick<Springline, "db">, row: MoveRow): Result<never> {
  const by = lastChangeBy(app.db, row.id);
  const byName = by === null ? null : (namesById(app.db).get(by) ?? null);
  const { move, updatedAt, archivedAt } = row;
  const now: MoveNow = { move, updatedAt, archived: archivedAt !== null, byName };
  return moveChangedBy(byName ?? "Somebody", now);
}
