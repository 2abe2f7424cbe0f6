/** Whether a signed plan still says what its newest edition says. */
import type * as Y from "yjs";
import { contentHash } from "#lib/canonical/canonical.ts";
import { readPlan } from "#lib/doc/read.ts";
import type { Plan } from "#lib/plan/schema.ts";

/**
 * The document is read with the moves, machines and standards that the edition was signed with, so that a change of the
 * library or the studio alone never counts: what was signed is what reaches the floor.
 */
export function differsFromEdition(signed: { readonly hash: string; readonly plan: Plan }, doc: Y.Doc): boolean {
  const { moves, equipment, standards } = signed.plan;
  const then = readPlan(doc, { moves, equipment, standards: standards ?? {} });
  try {
    return contentHash(then) !== signed.hash;
  } catch {
    return true; // it holds something that no plan can, so it is not what was signed
  }
}
