/** The doctor's check of e-mail: whether it is set up, when the last mail went, and whether any could not be sent. */
import { existsSync } from "node:fs";
import { type Db, openDatabase } from "#db/connection.ts";
import { countMails } from "#db/repos/mail-repo.ts";
import { plural } from "#lib/plan/format.ts";
import type { DataLocation } from "#server/base/env.ts";
import { isMailSetUp } from "#server/mail/mail-settings.ts";
import { type Diagnosis, right, unsure, wrong } from "./finding.ts";
import { utcMinute } from "./times.ts";

const WHAT = "e-mail";

export function mailFinding({ databaseFile }: Pick<DataLocation, "databaseFile">): Diagnosis {
  if (!existsSync(databaseFile)) return unsure(WHAT, "not checked: there is no database yet.");
  try {
    const db = openDatabase(databaseFile, { readOnly: true });
    try {
      return mailWords(db, utcMinute);
    } finally {
      db.close();
    }
  } catch (error) {
    return unsure(WHAT, `not checked: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** Of an open database; `when` puts a moment into words. */
export function mailWords(db: Db, when: (at: number) => string): Diagnosis {
  if (!isMailSetUp({ db })) return right(WHAT, "not set up: people are told in the app only.");
  const { waiting, failed, lastSentAt } = countMails(db);
  const last = lastSentAt === null ? "none has been sent in the last 90 days" : `the last one went ${when(lastSentAt)}`;
  const found = `set up; ${last}${waiting > 0 ? `, ${waiting} waiting` : ""}`;
  if (failed === 0) return right(WHAT, `${found}.`);
  return wrong(
    WHAT,
    `${found}, and ${plural(failed, "mail")} could not be sent.`,
    "A manager sees why under Studio, E-mail, and can try again there.",
  );
}
