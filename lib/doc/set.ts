/** How a value is written: only where it differs, so that nothing is sent for nothing. */
import type * as Y from "yjs";

/** Undefined takes the key away. */
export function setOrDelete(map: Y.Map<unknown>, key: string, value: unknown): void {
  if (value === undefined) map.delete(key);
  else if (map.get(key) !== value) map.set(key, value);
}
