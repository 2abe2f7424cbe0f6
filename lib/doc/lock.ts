/**
 * The time of an item, and the lock on it. A lock keeps the seconds that it was set at under a key of its own, so that it
 * holds against whoever fitted the class to its length without having heard of it: their seconds come in beside it and do
 * not count while the item is locked.
 */
import { type ItemMap, LOCKED_SECONDS } from "./layout.ts";
import { setOrDelete } from "./set.ts";
import { bool, num } from "./values.ts";

/** The seconds that count. A document from before a lock had its own key holds only `seconds`. */
export function secondsOf(map: ItemMap): number | undefined {
  const seconds = num(map.get("seconds"));
  return bool(map.get("locked")) ? (num(map.get(LOCKED_SECONDS)) ?? seconds) : seconds;
}

/** A person who sets the time of a locked item sets what it is locked at. */
export function setItemSeconds(map: ItemMap, seconds: unknown): void {
  setOrDelete(map, "seconds", seconds);
  if (bool(map.get("locked"))) setOrDelete(map, LOCKED_SECONDS, seconds);
}

/** Locks at the seconds that count now; let go, the item keeps those. */
export function setLocked(map: ItemMap, locked: unknown): void {
  const seconds = secondsOf(map);
  setOrDelete(map, "locked", locked);
  setOrDelete(map, LOCKED_SECONDS, locked === true ? seconds : undefined);
  setOrDelete(map, "seconds", seconds);
}
