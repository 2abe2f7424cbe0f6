/** Plans with their threads and editions as open files. */
import type { Db } from "#db/connection.ts";
import { type EditionHead, listEditions, readEditionText } from "#db/repos/edition-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { listPlanRows, type PlanRow } from "#db/repos/plan-repo.ts";
import { listThreads } from "#db/repos/thread-repo.ts";
import { newestWithdrawals, readWithdrawal } from "#db/repos/withdrawal-repo.ts";
import { fileStem } from "#server/editions/editions.ts";
import { exportPlan, planFileText } from "#server/plans/export-plan.ts";
import { saveThreads, threadsFileText } from "#server/threads/save-threads.ts";
import { type ExportedFile, idName, jsonFile, textFile } from "./exported-file.ts";
import { type StudioReader, WHOLE_STUDIO } from "./studio-reader.ts";

/** What could not be written as an open file: its document and its rows travel all the same. */
export interface LeftOut {
  readonly path: string;
  readonly why: string;
}

export function* planFiles(reader: StudioReader, leftOut: LeftOut[]): Generator<ExportedFile> {
  for (const row of plansOf(reader.db)) {
    const name = idName(fileStem(row.title), row.id);
    const path = `plans/${name}.plan.json`;
    const plan = exportPlan(reader, WHOLE_STUDIO, row.id);
    if (plan.ok) yield textFile(path, planFileText(plan.value));
    else leftOut.push({ path, why: plan.error.message });
    if (listThreads(reader.db, row.id).length === 0) continue;
    const threadsPath = `threads/${name}.threads.jsonld`;
    const threads = saveThreads(reader, WHOLE_STUDIO, row.id);
    if (threads.ok) yield textFile(threadsPath, threadsFileText(threads.value.data));
    else leftOut.push({ path: threadsPath, why: threads.error.message });
  }
}

const plansOf = (db: Db): PlanRow[] =>
  listPlanRows(db)
    .filter((row) => row.deletedAt === null)
    .sort((a, b) => (a.id < b.id ? -1 : 1));

export interface PublicKey {
  readonly id: string;
  /** base64url, 32 bytes. */
  readonly publicKey: string;
}

/** Each edition with its card, as it was signed byte for byte, the public keys, and a list. */
export function* editionFiles({ db }: StudioReader, keys: readonly PublicKey[]): Generator<ExportedFile> {
  yield jsonFile("editions/public-keys.json", { keys });
  const list: object[] = [];
  const [names, withdrawn] = [namesById(db), newestWithdrawals(db)];
  for (const row of plansOf(db)) {
    const folder = `editions/${idName(fileStem(row.title), row.id)}`;
    for (const head of listEditions(db, row.id).sort((a, b) => a.number - b.number)) {
      const text = readEditionText(db, row.id, head.number);
      if (!text) continue;
      const [plan, card] = [`${folder}/edition-${head.number}.plan.json`, `${folder}/edition-${head.number}.card.json`];
      yield textFile(plan, text.planJson);
      yield textFile(card, text.cardJson);
      const why = withdrawn.has(row.id) ? readWithdrawal(db, row.id, head.number)?.reason : undefined;
      list.push({ ...listed(head, names), plan, card, ...(why === undefined ? {} : { withdrawn: why }) });
    }
  }
  yield jsonFile("editions/editions.json", list);
}

const listed = (
  { planId, number, title, hash, signedBy, signedAt, note }: EditionHead,
  names: Map<string, string>,
) => ({
  ...{ planId, number, title, hash, note },
  signedBy: names.get(signedBy) ?? null,
  signedAt: new Date(signedAt).toISOString(),
});
