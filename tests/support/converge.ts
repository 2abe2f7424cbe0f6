/** The comparison at the end of every convergence test: all replicas agree, by several independent checks. */
import { expect } from "vitest";
import * as Y from "yjs";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import { readDeleted, readPlan } from "#lib/doc/read.ts";
import { SMALL_PLAN } from "./sync-server.ts";

const STUDIO: StudioContext = { moves: SMALL_PLAN.moves, equipment: SMALL_PLAN.equipment };

/** Everything that a person can read in a document. */
export const readAll = (doc: Y.Doc) => ({ plan: readPlan(doc, STUDIO), deleted: readDeleted(doc) });

/**
 * Same plan, same state vectors, nothing pending, reading writes nothing, a document built from every update ever
 * made equals the live ones, and so does one that was stored and read back.
 */
export function expectConverged(docs: readonly Y.Doc[], everyUpdate: readonly Uint8Array[]): void {
  const [first] = docs;
  if (!first) throw new Error("nothing to compare");
  const expected = readAll(first);
  const vector = Y.encodeStateVector(first);
  for (const doc of [...docs, built(everyUpdate), built([Y.encodeStateAsUpdate(first)])]) {
    expect(doc.store.pendingStructs).toBe(null);
    expect(doc.store.pendingDs).toBe(null);
    let updates = 0;
    doc.on("update", () => updates++);
    expect(readAll(doc)).toEqual(expected);
    expect(updates).toBe(0);
    expect(Y.decodeStateVector(Y.encodeStateVector(doc))).toEqual(Y.decodeStateVector(vector));
    expect(Y.equalSnapshots(Y.snapshot(doc), Y.snapshot(first))).toBe(true);
  }
}

/** In reverse, so that nothing arrives in the order it was made. */
function built(updates: readonly Uint8Array[]): Y.Doc {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, Y.mergeUpdates([...updates].reverse()));
  return doc;
}
