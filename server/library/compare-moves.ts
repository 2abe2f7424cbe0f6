/** How the moves of a plan file differ from the library, to be shown before they are stored. Stores nothing. */
import { listStudioRooms } from "#db/repos/room-repo.ts";
import { changedKeys, type MoveChange, moveChanges } from "#lib/library/changes.ts";
import { knownSprings, springNames } from "#lib/library/known-springs.ts";
import type { Move } from "#lib/plan/schema.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { moveLibrary } from "#server/studio-data/move-library.ts";
import { badMoveFile } from "./refusals.ts";

export interface BroughtMove {
  readonly id: string;
  readonly move: Move;
  readonly kind: "new" | "differs" | "same";
  /** The differences from the library's move to the file's; empty unless `kind` is "differs". */
  readonly changes: readonly MoveChange[];
  /** The library's `updatedAt`, to be sent back when the move is stored; null for a new one. */
  readonly seen: number | null;
  /** The id of another move in the library with the same name. */
  readonly nameOf: string | null;
}

/** `file`: the text of a plan file, or its parsed JSON. Errors: 403 no-right, 422 bad-plan-file with `details.pointer`. */
export function compareMoves(
  app: Pick<Springline, "db">,
  actor: Actor,
  file: unknown,
): Result<{ moves: BroughtMove[] }> {
  if (!can(actor, "library.write")) return NO_RIGHT;
  const parsed = parsePlan(file);
  if (!parsed.ok) return badMoveFile(parsed);
  const names = springNames(
    knownSprings([...listStudioRooms(app.db), { name: "the file", equipment: parsed.plan.equipment }]),
  );
  const { rows } = moveLibrary(app.db);
  const moves = Object.entries(parsed.plan.moves).map(([id, move]): BroughtMove => {
    const had = rows.find((row) => row.id === id);
    const nameOf =
      rows.find((row) => row.id !== id && row.archivedAt === null && row.move.name === move.name)?.id ?? null;
    const brought = { id, move, seen: had?.updatedAt ?? null, nameOf };
    if (!had) return { ...brought, kind: "new", changes: [] };
    if (changedKeys(had.move, move).length === 0) return { ...brought, kind: "same", changes: [] };
    return { ...brought, kind: "differs", changes: moveChanges(had.move, move, names) };
  });
  return ok({ moves });
}
