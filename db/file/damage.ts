/**
 * Known damage to an open database. Once there is any, nothing more is written through the connection: writing to a damaged
 * file may destroy good pages, and nothing in such a file may be called saved. This lasts until the next start, which
 * checks the file first.
 */
import type Database from "better-sqlite3";
import { damageOf } from "./soundness.ts";

export interface Damage {
  /** What is wrong with the file; null while no damage is known. */
  readonly known: string | null;
  /** From now on the database is read-only. The first report is kept. */
  found(what: string): void;
  /** Called once when damage becomes known. */
  onFound(listener: () => void): void;
  /** Called after every SQLite error that means that the file may be damaged. */
  onSuspicion(listener: () => void): void;
}

/** Watches the statements of `raw` from now on. */
export function watchDamage(raw: Database.Database): Damage {
  let known: string | null = null;
  const found: (() => void)[] = [];
  const suspicions: (() => void)[] = [];
  listen(raw, () => {
    for (const tell of suspicions) tell();
  });
  return {
    get known() {
      return known;
    },
    found(what) {
      if (known !== null) return;
      known = what;
      raw.pragma("query_only = 1");
      for (const tell of found) tell();
    },
    onFound: (listener) => void found.push(listener),
    onSuspicion: (listener) => void suspicions.push(listener),
  };
}

const RUNNING = ["run", "get", "all"] as const;

/** Errors occur in any part of the program, so they are caught where every statement passes. */
function listen(raw: Database.Database, suspect: () => void): void {
  const heard = <A extends unknown[], R>(act: (...args: A) => R) => {
    return (...args: A): R => {
      try {
        return act(...args);
      } catch (error) {
        if (damageOf(error) !== undefined) suspect();
        throw error;
      }
    };
  };
  const prepare = heard(raw.prepare.bind(raw));
  raw.prepare = ((source: string) => {
    const statement = prepare(source);
    for (const name of RUNNING) {
      const value = heard(statement[name].bind(statement));
      Object.defineProperty(statement, name, { value });
    }
    return statement;
  }) as typeof raw.prepare; // its own overloads only narrow what a row is
  raw.exec = heard(raw.exec.bind(raw));
}
