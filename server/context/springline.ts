/**
 * The one object of the running program: what `server/main.ts` built, reached from every module. Next's bundle of the
 * route handlers and the server's own bundle hold separate copies of modules, so what must exist once (the database
 * handle, the live rooms) hangs on globalThis and is asked for here, never at import.
 */

import type { Db } from "#db/connection.ts";
import type { Auth } from "#server/auth/auth.ts";
import type { Env } from "#server/base/env.ts";
import type { Log } from "#server/base/log.ts";
import type { LiveDocuments } from "#server/context/live-documents.ts";
import type { SigningKeys } from "#server/signing/keys.ts";
import type { Checks } from "./checks.ts";

export interface Springline {
  readonly env: Env;
  readonly log: Log;
  readonly db: Db;
  readonly auth: Auth;
  /** The live shared documents. */
  readonly rooms: LiveDocuments;
  /** What the rules say of plans, worked out off the thread that serves people. */
  readonly checks: Checks;
  /** The studio's Ed25519 keys. */
  readonly keys: SigningKeys;
  /** What the first run asks for, printed where the server was started; undefined when nobody beyond this machine can come. */
  readonly setUpCode?: string | undefined;
  /** ms since the epoch, UTC. */
  now(): number;
  /** A fresh random id, fit for a plan file: `^[a-z0-9][a-z0-9-]{0,63}$`. */
  newId(): string;
}

const KEY = Symbol.for("springline");

interface Holder {
  [KEY]?: Springline;
}

/** Throws when the server has not been composed: a route handler imported outside `server/main.ts`. */
export function springline(): Springline {
  const found = (globalThis as Holder)[KEY];
  if (!found) throw new Error("The program is not running: server/main.ts builds it before anything asks for it.");
  return found;
}

/** Called once by the composition root (and by tests, which pass undefined when they end). */
export function setSpringline(value: Springline | undefined): void {
  (globalThis as Holder)[KEY] = value;
}
