/**
 * The time of an item, and the lock on it. A lock keeps its seconds under a key of its own. So it holds even when
 * somebody who had not heard of it fitted the class to its length: their seconds arrive beside it and do not count
 * while the item is locked.
 */
import { type ItemMap, LOCKED_SECONDS } from "./layout.ts";
import { setOrDelete } from "./set.ts";
import { bool, num } from "./values.ts";

/** The seconds that count. In a document from before locks had a key of their own there is only `seconds`. */
export function secondsOf(map: ItemMap): number | undefined {
  const seconds = num(map.get("seconds"));
  return bool(map.get("locked")) ? (num(map.get(LOCKED_SECONDS)) ?? seconds) : seconds;
}

/** Sets the time of an item; on a locked one, the time it is locked at. */
export function writeSeconds(map: ItemMap, seconds: unknown): void {
  setOrDelete(map, "seconds", seconds);
  if (bool(map.get("locked"))) setOrDelete(map, LOCKED_SECONDS, seconds);
}

/** Locks at the seconds that count now; unlocked, the item keeps them. */
export function setLocked(map: ItemMap, locked: unknown): void {
  const seconds = secondsOf(map);
  setOrDelete(map, "locked", locked);
  setOrDelete(map, LOCKED_SECONDS, locked === true ? seconds : undefined);
  setOrDelete(map, "seconds", seconds);
}
