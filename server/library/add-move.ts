/** Adds a move to the library. Its id is derived from its name once and never changes. */
import * as z from "zod";
import { moveIdFor } from "#lib/library/move-id.ts";
import { sameData } from "#lib/plan/same-data.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { moveLibrary } from "#server/studio-data/move-library.ts";
import { checkMove } from "./check-move.ts";
import { changeLibrary, storeMove } from "./store-move.ts";

export const newMoveSchema = z.strictObject({ move: z.unknown() });

export interface StoredMove {
  readonly id: string;
  /** ms since the epoch; the next change has to name it. */
  readonly updatedAt: number;
}

/** Errors: 403 no-right, 422 bad-move and 409 name-taken, both with `details.faults` by place. */
export function addToLibrary(
  app: Springline,
  actor: Actor,
  { move }: z.infer<typeof newMoveSchema>,
): Result<StoredMove> {
  if (actor?.kind !== "person" || !can(actor, "library.write")) return NO_RIGHT;
  return changeLibrary(app, () => {
    const { rows } = moveLibrary(app.db);
    // Sent again because the first answer was lost: it is stored once.
    const there = rows.find((row) => row.archivedAt === null && sameData(row.move, move));
    if (there) return ok({ id: there.id, updatedAt: there.updatedAt });
    const checked = checkMove(app.db, move, null);
    if (!checked.ok) return checked;
    const id = moveIdFor(checked.value.name, new Set(rows.map((row) => row.id)));
    return ok({ id, updatedAt: storeMove(app, actor, { id, move: checked.value, kind: "added" }) });
  });
}
