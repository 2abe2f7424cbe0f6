/** Whether a signed plan still says what its newest edition says. */
import type * as Y from "yjs";
import { contentHash } from "#lib/canonical/canonical.ts";
import { readPlan } from "#lib/doc/read.ts";
import type { Plan } from "#lib/plan/schema.ts";

/**
 * Read with the moves, machines and standards that the edition was signed with, so that a change of the library or of
 * the house alone never counts: what was signed is what reaches the floor, whatever the library says later.
 */
export function differsFromEdition(signed: { readonly hash: string; readonly plan: Plan }, doc: Y.Doc): boolean {
  const { moves, equipment, standards } = signed.plan;
  const then = readPlan(doc, { moves, equipment, standards: standards ?? {} });
  try {
    return contentHash(then) !== signed.hash;
  } catch {
    return true; // it holds what no plan can: certainly not what was signed
  }
}
