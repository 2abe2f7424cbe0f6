/** Updates as bytes, without a document: validating, tidying and merging them. */
import * as Y from "yjs";

export type DecodedUpdate = ReturnType<typeof Y.decodeUpdate>;

/** Decodes an update without a document; undefined for bytes that are not an update and must never reach one. */
export function decodeUpdate(update: Uint8Array): DecodedUpdate | undefined {
  try {
    return Y.decodeUpdate(update);
  } catch {
    // Expected for malformed bytes.
    return undefined;
  }
}

const NOTHING = Y.encodeStateAsUpdate(new Y.Doc());

/**
 * The same update with each deletion in it once: yjs processes overlapping ranges again and again. Undefined for bytes
 * that are not an update.
 */
export function tidyUpdate(update: Uint8Array): { bytes: Uint8Array; decoded: DecodedUpdate } | undefined {
  const decoded = decodeUpdate(update);
  if (!decoded || !overlaps(decoded.ds)) return decoded && { bytes: update, decoded };
  // Merging sorts the ranges and joins those that touch.
  const bytes = Y.mergeUpdates([update, NOTHING]);
  return { bytes, decoded: Y.decodeUpdate(bytes) };
}

function overlaps({ clients }: DecodedUpdate["ds"]): boolean {
  for (const ranges of clients.values()) {
    let end = -1;
    for (const { clock, len } of ranges) {
      if (clock < end) return true;
      end = clock + len;
    }
  }
  return false;
}

/** As many as yjs merges efficiently: it sorts all of them again for each struct it writes. */
const AT_ONCE = 32;

/** Several updates as one. */
export function mergeUpdates(updates: readonly Uint8Array[]): Uint8Array {
  const [first] = updates;
  if (updates.length === 1 && first) return first;
  if (updates.length <= AT_ONCE) return Y.mergeUpdates([...updates]);
  const parts: Uint8Array[] = [];
  for (let at = 0; at < updates.length; at += AT_ONCE) parts.push(mergeUpdates(updates.slice(at, at + AT_ONCE)));
  return mergeUpdates(parts);
}

/** The same for unchecked bytes; undefined when one of them is not an update. */
export function putTogether(updates: readonly Uint8Array[]): Uint8Array | undefined {
  try {
    return mergeUpdates(updates);
  } catch {
    // Expected for malformed bytes.
    return undefined;
  }
}
