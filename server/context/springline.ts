/**
 * The running program, as commands and route handlers see it; `server/main` builds it. Next's bundle and the server's own
 * bundle hold separate copies of every module, so what must exist once (the database, the live documents) hangs on
 * globalThis. It is asked for here, at the time of use and never at import.
 */

import type { Db } from "#db/connection.ts";
import type { WordIndex } from "#db/words/word-index.ts";
import type { Auth } from "#server/auth/auth.ts";
import type { Env } from "#server/base/env.ts";
import type { Log } from "#server/base/log.ts";
import type { LiveDocuments } from "#server/context/live-documents.ts";
import type { SigningKeys } from "#server/signing/keys.ts";
import type { Care } from "./care.ts";
import type { Checks } from "./checks.ts";
import type { Fills } from "./fills.ts";

export interface Springline {
  readonly env: Env;
  readonly log: Log;
  readonly db: Db;
  readonly auth: Auth;
  /** The live shared documents. */
  readonly documents: LiveDocuments;
  /** Runs the rules on plans, on threads of their own. */
  readonly checks: Checks;
  /** The words of all plans, to find them by. */
  readonly words: WordIndex;
  /** Fills months, on a thread. */
  readonly fills: Fills;
  /** Backups, and what else looks after the server. */
  readonly care: Care;
  /** The studio's Ed25519 keys. */
  readonly keys: SigningKeys;
  /** The code that the first run asks for, printed on the console; undefined when only this machine can reach the server. */
  readonly setUpCode?: string | undefined;
  /** ms since the epoch, UTC. */
  now(): number;
  /** A new random id that is valid in a plan file: `^[a-z0-9][a-z0-9-]{0,63}$`. */
  newId(): string;
}

const KEY = Symbol.for("springline");

interface Holder {
  [KEY]?: Springline;
}

/** Throws when the program is not running, as in a route handler that is imported by something else. */
export function springline(): Springline {
  const found = (globalThis as Holder)[KEY];
  if (!found) throw new Error("The program is not running: server/main.ts has to start it first.");
  return found;
}

/** Called once by the composition root, and by tests, which pass undefined when they end. */
export function setSpringline(value: Springline | undefined): void {
  (globalThis as Holder)[KEY] = value;
}
