/** Writes a value only where it differs, so that nothing is sent needlessly. */
import type * as Y from "yjs";

/** Undefined removes the key. */
export function setOrDelete(map: Y.Map<unknown>, key: string, value: unknown): void {
  if (value === undefined) map.delete(key);
  else if (map.get(key) !== value) map.set(key, value);
}
