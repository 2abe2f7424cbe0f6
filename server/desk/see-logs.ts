/** Notes that somebody has looked at the logs of an edition's classes, so that they wait at the desk no more. */
import { markLogsSeen } from "#db/repos/desk-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { Person } from "#lib/policy/can.ts";
import type { Springline } from "#server/context/springline.ts";

export function noteLogsSeen(app: Pick<Springline, "db" | "now">, person: Person, sessionIds: readonly string[]): void {
  inTransaction(app.db, () => markLogsSeen(app.db, person.id, sessionIds, app.now()));
}
