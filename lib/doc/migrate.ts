/** Migrates a document written by an older version, with one idempotent step for each version. Never drops a key. */
import type * as Y from "yjs";
import { themeToText } from "./late-theme.ts";
import { docVersion, PLAN_DOC_VERSION } from "./layout.ts";

export interface DocMigration {
  /** The version the document has after this step. */
  readonly to: number;
  readonly run: (doc: Y.Doc) => void;
}

/** Version 1 is the first. Since version 2 the theme is a shared text. */
const PLAN_STEPS: readonly DocMigration[] = [{ to: 2, run: themeToText }];

export type Migration = { kind: "current" } | { kind: "migrated"; from: number } | { kind: "newer"; version: number };

/** Runs the steps a document still needs, in one transaction. A document newer than this program is left as it is. */
export function migrate(
  doc: Y.Doc,
  steps: readonly DocMigration[] = PLAN_STEPS,
  current: number = PLAN_DOC_VERSION,
): Migration {
  const from = docVersion(doc);
  if (from > current) return { kind: "newer", version: from };
  if (from === current) return { kind: "current" };
  doc.transact(() => {
    for (const step of steps) if (step.to > from) step.run(doc);
    doc.getMap("meta").set("version", current);
  }, "migrate");
  return { kind: "migrated", from };
}
