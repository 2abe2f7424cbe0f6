/** Two people who work in the studio never bear one name: a comment, a sign-off and a share are told apart by it. */
import type { Db } from "#db/connection.ts";
import { listMembers } from "#db/repos/people-repo.ts";
import { fail, type Result } from "#server/base/result.ts";

/**
 * As names are compared: in one Unicode form (NFKC), without case, without spaces of any kind and without signs that are not
 * seen. Letters of other scripts that look alike are not the same.
 */
export const personNameKey = (name: string): string =>
  name
    .normalize("NFKC")
    .replace(/[\s\p{Z}\p{Cf}\p{Default_Ignorable_Code_Point}\u2800]/gu, "")
    .toUpperCase()
    .toLowerCase()
    .normalize("NFKC");

/** `ownId`: who is to bear it, when that is somebody known. Undefined where nobody else has it. Within the transaction that writes it. */
export function refuseSameName(db: Db, name: string, ownId?: string): Result<never> | undefined {
  const key = personNameKey(name);
  const other = listMembers(db).find((one) => one.id !== ownId && personNameKey(one.name) === key);
  return (
    other &&
    fail(
      409,
      "name-taken",
      `${other.name} works in this studio, and two people with one name could not be told apart. Add a second name, an initial or a place.`,
    )
  );
}
