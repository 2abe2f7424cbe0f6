/** Reads plans, threads and months of a database that nobody else writes to: of a moment held still, or of a copy. */
import type { Db } from "#db/connection.ts";
import { readGeneration } from "#db/repos/doc-log-repo.ts";
import { migrate } from "#lib/doc/migrate.ts";
import type { Person } from "#lib/policy/can.ts";
import { migrateMonth } from "#lib/programme/migrate.ts";
import { formatDocName } from "#lib/protocol/messages.ts";
import { createLog } from "#server/base/log.ts";
import { DocUnavailable, type LiveDocuments } from "#server/context/live-documents.ts";
import { DamagedLog, loadDoc } from "#server/doc-log/stored-doc.ts";

export interface StudioReader {
  readonly db: Db;
  readonly documents: LiveDocuments;
  readonly env: { readonly origin: string };
  now(): number;
}

/** Whoever exports holds the whole studio. */
export const WHOLE_STUDIO: Person = { kind: "person", id: "export", roles: ["lead", "manager", "coach"] };

const log = createLog("silent");

/** `at`: the moment, ms since the epoch, that the files speak of as now. */
export function studioReader(db: Db, origin: string, at: number): StudioReader {
  const documents: Pick<LiveDocuments, "withDoc" | "generation"> = {
    generation: (name) => readGeneration(db, formatDocName(name)),
    withDoc(name, fn) {
      const loaded = docOf(db, formatDocName(name));
      try {
        // Of a document that an older program wrote, on this copy alone.
        const brought = name.kind === "plan" ? migrate(loaded) : migrateMonth(loaded);
        if (brought.kind === "newer")
          throw new DocUnavailable("newerDocument", "It was written by a newer version of Springline.");
        return fn(loaded);
      } finally {
        loaded.destroy();
      }
    },
  };
  // Whatever writes, or tells pages, has no place in an export: it would be a mistake of the program, and throws.
  return { db, documents: documents as LiveDocuments, env: { origin }, now: () => at };
}

function docOf(db: Db, name: string) {
  try {
    const loaded = loadDoc(db, name, log);
    if (loaded) return loaded.doc;
  } catch (error) {
    if (!(error instanceof DamagedLog)) throw error;
    throw new DocUnavailable("damaged", `The document ${name} cannot be read completely.`, { cause: error });
  }
  throw new DocUnavailable("unknownDocument", `There is no document ${name}.`);
}
