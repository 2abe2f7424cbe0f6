/**
 * A process that records without a pause, to be killed. Each commit stores a plan event, which is recorded, and a row that
 * stands for itself. Argument: database file. Prints `up` after the first.
 */
import { openDatabase } from "#db/connection.ts";
import { addPlanEvent } from "#db/repos/event-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { inTransaction } from "#db/transaction.ts";

const db = openDatabase(process.argv[2] ?? "", { synchronous: "NORMAL" });
for (let n = 0; ; n++) {
  inTransaction(db, () => {
    addPlanEvent(db, { planId: "p", at: n, actorId: "a", kind: "shared", note: "b" });
    addToRecord(db, { at: n, actorId: "a", subject: "person/b", kind: "roles", body: { n } });
  });
  if (n === 0) process.stdout.write("up\n");
}
