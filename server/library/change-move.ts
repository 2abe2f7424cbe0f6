/**
 * A change of one move, from the state its editor began with. When somebody was faster it is refused with what stands
 * there now, so that the two can be put together, or written over knowingly. Signed editions keep what they were.
 */
import * as z from "zod";
import { type MoveRow, readMoveRow } from "#db/repos/move-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Move } from "#lib/plan/schema.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { fail, NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import type { StoredMove } from "./add-move.ts";
import { checkMove } from "./check-move.ts";
import { lastChangeBy } from "./read-move.ts";
import { changeLibrary, storeMove } from "./store-move.ts";

export const moveChangeSchema = z.strictObject({
  move: z.unknown(),
  /** `updatedAt` of the move that the change began from. */
  base: z.number(),
});

/** What stands in the library where somebody else was faster: `details` of 409 move-changed. */
export interface MoveNow {
  readonly move: Move;
  readonly updatedAt: number;
  readonly archived: boolean;
  readonly byName: string | null;
}

/**
 * The same move once more changes nothing. Errors: 403 no-right, 404, 409 move-changed (`details` a MoveNow), 422
 * bad-move and 409 name-taken with `details.faults`.
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
    // Sent again because the first answer got lost, or the same thought by two people.
    if (sameData(move, row.move)) return ok({ id, updatedAt: row.updatedAt });
    if (row.updatedAt !== base) return moveChanged(app, row);
    const checked = checkMove(app.db, move, id);
    if (!checked.ok) return checked;
    return ok({ id, updatedAt: storeMove(app, actor, { id, move: checked.value, kind: "changed" }) });
  });
}

/** 409 move-changed: with the move as it is now and who changed it. */
export function moveChanged(app: Pick<Springline, "db">, row: MoveRow): Result<never> {
  const by = lastChangeBy(app.db, row.id);
  const byName = by === null ? null : (namesById(app.db).get(by) ?? null);
  const { move, updatedAt, archivedAt } = row;
  const now: MoveNow = { move, updatedAt, archived: archivedAt !== null, byName };
  const who = byName ?? "Somebody";
  const message = `${who} changed this move while you were at it. Nothing was saved, and nothing you typed is lost.`;
  return fail(409, "move-changed", message, now);
}
