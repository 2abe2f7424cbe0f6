/** What does not hold in a studio's data: its record, its editions, its signed months, its documents. Each as a sentence. */
import type { Db } from "#db/connection.ts";
import { listDocumentNames, listOrphanedLogs } from "#db/repos/doc-log-repo.ts";
import { listEditions } from "#db/repos/edition-repo.ts";
import { listMonthEditions } from "#db/repos/month-edition-repo.ts";
import { listMonths } from "#db/repos/month-repo.ts";
import { listPlanRows } from "#db/repos/plan-repo.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { createLog } from "#server/base/log.ts";
import { loadDoc } from "#server/doc-log/stored-doc.ts";
import { readSoundEdition } from "#server/editions/sound-edition.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import type { PublicKey } from "./plan-files.ts";

const log = createLog("silent");

/** Reads everything; the sentences are the same for the same data. */
export function studioFaults(db: Db, keys: readonly PublicKey[]): string[] {
  const proof = proveRecord(db);
  return [
    ...(proof.holds ? [] : [`The record does not hold. ${proof.fault.say}`]),
    ...editionFaults(db, keys),
    ...monthFaults(db),
    ...documentFaults(db),
  ];
}

function editionFaults(db: Db, keys: readonly PublicKey[]): string[] {
  const publicKeyOf = (id: string) => keys.find((key) => key.id === id)?.publicKey;
  const reader = { db, log, keys: { publicKeyOf } };
  return listPlanRows(db).flatMap(({ id }) =>
    listEditions(db, id)
      .filter(({ number }) => readSoundEdition(reader, id, number) === "damaged")
      .map(({ number }) => `Edition ${number} of plan ${id} is not what was signed.`),
  );
}

const monthFaults = (db: Db): string[] =>
  listMonths(db, "").flatMap((month) =>
    listMonthEditions(db, month)
      .filter(({ fileJson, hash }) => sha256Hex(fileJson) !== hash)
      .map(({ number }) => `Edition ${number} of the month ${month} is not what was signed off.`),
  );

function documentFaults(db: Db): string[] {
  const names = listDocumentNames(db);
  const known = new Set(names);
  const without = listPlanRows(db).filter(({ id }) => !known.has(`plan/${id}`));
  return [
    ...names.flatMap((name) => documentFault(db, name)),
    ...listOrphanedLogs(db).map((name) => `There are changes of ${name}, but no such document.`),
    ...without.map(({ id }) => `The plan ${id} has no document.`),
  ];
}

function documentFault(db: Db, name: string): string[] {
  try {
    loadDoc(db, name, log)?.doc.destroy();
    return [];
  } catch {
    return [`The document ${name} cannot be read completely.`];
  }
}
