/** The doctor's check of the studio's record: does its chain hold? */
import { existsSync } from "node:fs";
import { openDatabase } from "#db/connection.ts";
import type { DataLocation } from "#server/base/env.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import { type Diagnosis, right, unsure, wrong } from "./finding.ts";

export function recordFinding({ databaseFile }: Pick<DataLocation, "databaseFile">): Diagnosis {
  const what = "record";
  if (!existsSync(databaseFile)) return unsure(what, "there is no database yet.");
  try {
    const db = openDatabase(databaseFile, { readOnly: true });
    try {
      const proof = db.raw.transaction(() => proveRecord(db)).deferred();
      if (!proof.holds)
        return wrong(what, proof.fault.say, "Compare a backup from before: npm run -s record -- verify");
      const { seq, hash } = proof.head;
      return right(what, `holds: ${seq.toLocaleString("en-GB")} rows, head ${seq}:${hash.slice(0, 16)}….`);
    } finally {
      db.close();
    }
  } catch (error) {
    return unsure(what, `it cannot be read (${error instanceof Error ? error.message : String(error)})`);
  }
}
