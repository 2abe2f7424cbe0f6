/** What the moves of a plan file would bring to the library: nothing is stored; each difference is shown before. */
import { listRooms } from "#db/repos/room-repo.ts";
import { changedKeys, type MoveChange, moveChanges } from "#lib/library/changes.ts";
import { knownSprings, springNames } from "#lib/library/known-springs.ts";
import type { Move } from "#lib/plan/schema.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { fail, NO_RIGHT, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { library } from "./library-moves.ts";

export interface BroughtMove {
  readonly id: string;
  readonly move: Move;
  readonly kind: "new" | "differs" | "same";
  /** From the library's to the file's, fact by fact; empty but for "differs". */
  readonly changes: readonly MoveChange[];
  /** The library's `updatedAt`, null for a new one: what storing it begins from. */
  readonly seen: number | null;
  /** Another move of the library with the same name. */
  readonly nameOf: string | null;
}

/** `file`: the text of a plan file or its parsed JSON. Errors: 403 no-right, 422 bad-plan-file with `details.pointer`. */
export function compareMoves(
  app: Pick<Springline, "db">,
  actor: Actor,
  file: unknown,
): Result<{ moves: BroughtMove[] }> {
  if (!can(actor, "library.write")) return NO_RIGHT;
  const parsed = parsePlan(file);
  if (!parsed.ok) {
    const message = `This plan file cannot be read: ${parsed.message}.`;
    return fail(422, "bad-plan-file", message, { pointer: parsed.pointer, message: parsed.message });
  }
  const names = springNames(
    knownSprings([...listRooms(app.db), { name: "the file", equipment: parsed.plan.equipment }]),
  );
  const { rows } = library(app.db);
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
