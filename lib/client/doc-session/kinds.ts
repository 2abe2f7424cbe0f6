/** The versions this program speaks for each kind of document, which a page sends as it connects. One line a kind. */
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { MONTH_DOC_VERSION } from "#lib/programme/layout.ts";
import type { DocKind } from "#lib/protocol/messages.ts";

export interface Versions {
  readonly docVersion: number;
  /** Only where a document holds rich text. */
  readonly editorVersion?: number;
}

export const VERSIONS: Readonly<Record<DocKind, Versions>> = {
  plan: { docVersion: PLAN_DOC_VERSION, editorVersion: EDITOR_VERSION },
  month: { docVersion: MONTH_DOC_VERSION },
};
