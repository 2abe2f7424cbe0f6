/**
 * One line in the log for a cause that comes back with every request. Kept on globalThis: the pages' bundle and the
 * server's hold separate copies of this module.
 */
import type { Log } from "#server/base/log.ts";

/** Causes may hold words of strangers: what comes after this many says nothing new, and must cost nothing. */
const MOST_CAUSES = 20;
const KEY = Symbol.for("springline.warned");

interface Holder {
  [KEY]?: WeakMap<object, Set<string>>;
}

/** Warns unless the same `cause` was warned of in this log before. */
export function warnOnce(log: Pick<Log, "warn">, cause: string, details: object, message: string): void {
  const holder = globalThis as Holder;
  holder[KEY] ??= new WeakMap();
  const warned = holder[KEY].get(log) ?? new Set();
  holder[KEY].set(log, warned);
  if (warned.has(cause) || warned.size >= MOST_CAUSES) return;
  warned.add(cause);
  log.warn(details, message);
}
