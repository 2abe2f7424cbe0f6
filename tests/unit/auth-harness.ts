/** A running program without sockets or pages: the real database and sign-in library in a folder of its own. */

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Db, openDatabase } from "#db/connection.ts";
import { wordIndexBeside } from "#db/words/word-index.ts";
import { createAuth } from "#server/auth/auth.ts";
import { type Env, readEnv } from "#server/base/env.ts";
import { createLog } from "#server/base/log.ts";
import type { LiveDocuments } from "#server/context/live-documents.ts";
import { type Springline, setSpringline } from "#server/context/springline.ts";
import { createFills } from "#server/month-fill/fills.ts";
import { createSigningKeys } from "#server/signing/keys.ts";
import { idleCare } from "#tests/support/idle-care.ts";
import "#tests/support/quick-hashes.ts";
import { testChecks } from "#tests/support/test-checks.ts";

export const ORIGIN = "http://localhost:4310";
export const PASSWORD = "a long enough password";

export interface Harness {
  readonly app: Springline;
  readonly db: Db;
  /** How often the live rooms were told to ask about rights again. */
  refreshed(): number;
  /** Moves the program's own clock (invitations, session sweep); the sign-in library keeps the machine's. */
  advance(ms: number): void;
  stop(): void;
}

/** Puts the program where route handlers find it. One at a time. */
export function startHarness(change: Partial<Env> = {}): Harness {
  const dir = mkdtempSync(join(tmpdir(), "springline-auth-"));
  const env: Env = { ...readEnv("live", { SPRINGLINE_DATA: dir, SPRINGLINE_LOG: "silent" }), ...change };
  const db = openDatabase(env.databaseFile);
  const log = createLog("silent");
  let ahead = 0;
  let refreshed = 0;
  let ids = 0;
  const now = () => Date.now() + ahead;
  const rooms: LiveDocuments = {
    ...unusedRooms,
    refreshAccess: () => {
      refreshed++;
    },
    health: () => ({ rooms: 0, connections: 0, failing: [], refused: 0 }),
  };
  const app: Springline = {
    env,
    log,
    db,
    auth: createAuth(db, env, log),
    documents: rooms,
    keys: createSigningKeys({ db, secret: env.secret, now }),
    fills: createFills(),
    care: idleCare,
    words: wordIndexBeside(db),
    now,
    newId: () => `id-${++ids}`,
    get checks() {
      return checks;
    },
  };
  const checks = testChecks(app);
  setSpringline(app);
  return {
    app,
    db,
    refreshed: () => refreshed,
    advance: (ms) => {
      ahead += ms;
    },
    stop() {
      setSpringline(undefined);
      db.close();
      rmSync(dir, { recursive: true });
    },
  };
}

const unused = (): never => {
  throw new Error("no document is opened in these tests");
};
const unusedRooms: LiveDocuments = {
  create: unused,
  withDoc: unused,
  transact: unused,
  announce: unused,
  announceEach: unused,
  opened: () => [],
  generation: unused,
  inTurn: async (_userId, work) => await work(),
  drop: unused,
  refreshAccess: unused,
  stop: unused,
  health: unused,
};

export interface Asking {
  readonly method?: string;
  readonly body?: unknown;
  readonly cookie?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

let asked = 0;

/** A request as a page of this studio sends it, each from an address of its own unless `headers` says otherwise. */
export function request(path: string, asking: Asking = {}): Request {
  const address = `2001:db8:0:${(++asked).toString(16)}::1`;
  const headers = new Headers({ origin: ORIGIN, "x-springline-client": address, ...asking.headers });
  if (asking.cookie) headers.set("cookie", asking.cookie);
  const init: RequestInit = { method: asking.method ?? "GET", headers };
  if (asking.body !== undefined) {
    if (!headers.has("content-type")) headers.set("content-type", "application/json");
    init.body = typeof asking.body === "string" ? asking.body : JSON.stringify(asking.body);
  }
  return new Request(`${ORIGIN}${path}`, init);
}

/** What a browser would send back after this answer. */
export const cookieOf = (response: Response): string =>
  response.headers
    .getSetCookie()
    .map((cookie) => cookie.split(";")[0])
    .join("; ");

export const params = (values: Record<string, string>) => ({ params: Promise.resolve(values) });

/** An answer's status with its error code, or "" for a success. */
export async function outcome(response: Response): Promise<string> {
  if (response.ok) return String(response.status);
  const body = await response.json();
  return `${response.status} ${body.error.code}`;
}
