/** Updates as bytes: told good from bad, and several made one, without a document. */
import * as Y from "yjs";

/** Reads an update through without touching a document: bytes that are none must never reach one. */
export function isReadable(update: Uint8Array): boolean {
  try {
    Y.decodeUpdate(update);
    return true;
  } catch {
    // The answer, not a fault.
    return false;
  }
}

/** Several updates as one. */
export function mergeUpdates(updates: readonly Uint8Array[]): Uint8Array {
  const [first] = updates;
  return updates.length === 1 && first ? first : Y.mergeUpdates([...updates]);
}
