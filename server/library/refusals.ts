/** What people are told when a change of the library is refused. */
import type { Move } from "#lib/plan/schema.ts";
import { fail, type Result } from "#server/base/result.ts";

export const badMove = (faults: readonly { readonly place: string; readonly say: string }[]): Result<never> =>
  fail(422, "bad-move", "Nothing was saved. Correct the marked fields.", { faults });

export function moveNameTaken(name: string): Result<never> {
  const say = `There is already a move called ${name}. Give this one another name.`;
  return fail(409, "name-taken", say, { faults: [{ place: "name", say }] });
}

/** The current state of a move that somebody else changed first: `details` of 409 move-changed. */
export interface MoveNow {
  readonly move: Move;
  readonly updatedAt: number;
  readonly archived: boolean;
  readonly byName: string | null;
}

export const moveChangedBy = (who: string, now: MoveNow): Result<never> =>
  fail(
    409,
    "move-changed",
    `${who} changed this move while you were editing it. Nothing was saved, and what you typed is still here: compare the two and save again.`,
    now,
  );

export const movesChanged = (ids: readonly string[]): Result<never> =>
  fail(
    409,
    "moves-changed",
    "Somebody changed the library in the meantime. Nothing was stored: look at the differences again.",
    { ids },
  );

export const badMoveId = (id: string): Result<never> =>
  fail(422, "bad-id", `“${id}” is not a valid id for a move. Change it in the file.`);

export const badMoveFile = ({ pointer, message }: { readonly pointer: string; readonly message: string }) =>
  fail(422, "bad-plan-file", `This plan file cannot be read: ${message}.`, { pointer, message });
