/**
 * What is known of damage to an open database. Once any is known nothing more is written through the connection: what is
 * put on top of damage may take good pages with it, and nobody must be told that words in such a file are saved. It stays so
 * until the program is started again, which looks through the file first.
 */
import type Database from "better-sqlite3";
import { damageOf } from "./soundness.ts";

export interface Damage {
  /** What is wrong with the file; null while nothing is known to be. */
  readonly known: string | null;
  /** From now on the database only reads. The first finding stays. */
  found(what: string): void;
  /** Called once when damage becomes known. */
  onFound(listener: () => void): void;
  /** Called after every error by which SQLite says that the file may be damaged. */
  onSuspicion(listener: () => void): void;
}

/** Listens to the statements of `raw` from now on. */
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

/** An error may come to whoever asked, in any part of the program: it is heard where all of them pass. */
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
