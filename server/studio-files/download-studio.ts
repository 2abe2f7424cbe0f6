/** The export as a manager's download: sent as it is read from the disk, where it is gone at once. */
import { type FileHandle, open, rm } from "node:fs/promises";
import { dirname } from "node:path";
import { addToRecord } from "#db/repos/record-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { fail, NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { fileStem } from "#server/editions/editions.ts";
import { sentOnce } from "./sent-once.ts";

type App = Pick<Springline, "db" | "now" | "care">;

interface StudioDownload {
  readonly fileName: string;
  readonly bytes: number;
  readonly content: ReadableStream;
}

/**
 * Errors: 403 no-right, 409 export-runs, 503 damaged, 500 not-exported. On record before it begins, since what was downloaded is
 * out of the studio's hands. `gone` fires when whoever asked has left: the file is closed then.
 */
export async function downloadStudio(app: App, actor: Actor, gone?: AbortSignal): Promise<Result<StudioDownload>> {
  if (!can(actor, "studio.export") || actor?.kind !== "person") return NO_RIGHT;
  if (app.db.damage.known !== null) return DAMAGED;
  if (app.care.exports.running()) return EXPORT_RUNS;
  const entry = { at: app.now(), actorId: actor.id, subject: "studio", kind: "exported", body: null };
  inTransaction(app.db, () => addToRecord(app.db, entry));
  const made = await app.care.exports.make();
  if ("problem" in made) return fail(500, "not-exported", made.problem);
  const handle = await open(made.file, "r");
  const size = await sizeAlone(handle, made.file);
  const content = sentOnce(handle, gone);
  const day = new Date(app.now()).toISOString().slice(0, 10);
  return ok({ fileName: `${fileStem(readStudio(app.db)?.name ?? "")}-${day}.zip`, bytes: size, content });
}

/** In bytes. What is open stays readable until it has been sent. */
async function sizeAlone(handle: FileHandle, file: string): Promise<number> {
  try {
    await rm(dirname(file), { recursive: true, force: true });
    return (await handle.stat()).size;
  } catch (error) {
    await handle.close();
    throw error;
  }
}

const DAMAGED = fail(503, "damaged", "The database is damaged. Stop the server and restore the latest backup.");
const EXPORT_RUNS = fail(409, "export-runs", "An export is being made at this moment. Try again when it is done.");
