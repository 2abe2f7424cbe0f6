/**
 * One line in the log for a problem that every request would repeat. Kept on globalThis, since the bundle of the pages and
 * that of the server hold separate copies of this module.
 */
import type { Log } from "#server/base/log.ts";

/** Causes may contain text from outside, so their number is limited. */
const MOST_CAUSES = 20;
const KEY = Symbol.for("springline.warned");

interface Holder {
  [KEY]?: WeakMap<object, Set<string>>;
}

/** Warns unless this log already has a warning for the same `cause`. */
export function warnOnce(log: Pick<Log, "warn">, cause: string, details: object, message: string): void {
  const holder = globalThis as Holder;
  holder[KEY] ??= new WeakMap();
  const warned = holder[KEY].get(log) ?? new Set();
  holder[KEY].set(log, warned);
  if (warned.has(cause) || warned.size >= MOST_CAUSES) return;
  warned.add(cause);
  log.warn(details, message);
}
