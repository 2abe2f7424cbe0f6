/** Updates as bytes: told good from bad, and several made one, without a document. */
import * as Y from "yjs";

export type DecodedUpdate = ReturnType<typeof Y.decodeUpdate>;

/** Reads an update through without touching a document; undefined for bytes that are none: they must never reach one. */
export function decodeUpdate(update: Uint8Array): DecodedUpdate | undefined {
  try {
    return Y.decodeUpdate(update);
  } catch {
    // The answer, not a fault.
    return undefined;
  }
}

/** Several updates as one. */
export function mergeUpdates(updates: readonly Uint8Array[]): Uint8Array {
  const [first] = updates;
  return updates.length === 1 && first ? first : Y.mergeUpdates([...updates]);
}
