/** For statements that run many times a second: prepared once per database, and released with it. */
import type { Db } from "#db/connection.ts";

export function oncePerDatabase<T>(prepare: (db: Db) => T): (db: Db) => T {
  const made = new WeakMap<Db, T>();
  return (db) => {
    const known = made.get(db);
    if (known !== undefined) return known;
    const fresh = prepare(db);
    made.set(db, fresh);
    return fresh;
  };
}
