/** What kind of studio a data folder holds, and whether the secret that is at hand is its own. */
import { existsSync, readFileSync } from "node:fs";
import { openDatabase } from "#db/connection.ts";
import { listSigningKeys } from "#db/repos/signing-key-repo.ts";
import { type DataLocation, DEMO_SECRET } from "#server/base/env.ts";
import { ownKeys } from "#server/signing/keys.ts";
import { type Diagnosis, right, unsure, wrong } from "./finding.ts";

export interface StudioKind {
  /** The invented studio of `--demo`: its secret is public and in no file. */
  readonly demo: boolean;
  /** That its server runs with; undefined before the first start, and where it is not known. */
  readonly secret: string | undefined;
  /** What the keys in the database say about it. */
  readonly finding: Diagnosis;
}

const WHAT = "studio";
const RESTORE =
  "Put back the file secret, or the SPRINGLINE_SECRET, that this studio had; a backup holds it: npm run -s restore -- FILE";

/** The studio's signing keys can be opened with its own secret alone. Changes nothing. */
export function studioKind({ databaseFile, secretFile, givenSecret }: DataLocation): StudioKind {
  const secret = givenSecret ?? secretIn(secretFile);
  const none = { demo: false, secret };
  if (!existsSync(databaseFile))
    return { ...none, finding: unsure(WHAT, `there is none yet at ${databaseFile}; the first start creates it.`) };
  const keys = keysIn(databaseFile);
  if (keys === null) return { ...none, finding: unsure(WHAT, "not checked: its database cannot be read.") };
  if (keys.length === 0)
    return { ...none, finding: right(WHAT, "it has signed nothing yet, so any secret will do from here on.") };
  if (secret !== undefined && ownKeys(secret, keys).length > 0)
    return { ...none, finding: right(WHAT, "a real one; the secret is the one that its signing key was made with.") };
  if (ownKeys(DEMO_SECRET, keys).length > 0)
    return {
      demo: true,
      secret: DEMO_SECRET,
      finding: right(WHAT, "the invented one of npm run demo. Its secret is public: keep nothing real in it."),
    };
  return {
    ...none,
    finding: wrong(
      WHAT,
      secret === undefined
        ? "its secret is missing: nobody can sign off a plan, and what was encrypted with it cannot be read."
        : "the secret is another than the one that its signing key was made with, so nobody can sign off a plan.",
      RESTORE,
    ),
  };
}

/** Undefined where there is none, and when this account may not read it. */
function secretIn(file: string): string | undefined {
  try {
    return readFileSync(file, "utf8").trim();
  } catch {
    return undefined;
  }
}

function keysIn(databaseFile: string) {
  try {
    const db = openDatabase(databaseFile, { readOnly: true });
    try {
      return listSigningKeys(db);
    } finally {
      db.close();
    }
  } catch {
    return null;
  }
}
