/**
 * A studio without pages: the real database, live rooms and commands, with a clock that a test controls. The people are
 * one of each role, and a second coach. Announcements to rooms are kept in a list.
 */

import type { Db } from "#db/connection.ts";
import { putMove } from "#db/repos/move-repo.ts";
import { insertAccount } from "#db/repos/people-repo.ts";
import { insertRoom } from "#db/repos/room-repo.ts";
import { insertStudio } from "#db/repos/studio-repo.ts";
import { type WordIndex, wordIndexBeside } from "#db/words/word-index.ts";
import type { Writer } from "#lib/doc/write.ts";
import type { Equipment, Move } from "#lib/plan/schema.ts";
import type { Person, Role } from "#lib/policy/can.ts";
import { type DocName, formatDocName, type News } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { type Auth, createAuth } from "#server/auth/auth.ts";
import { type Env, readEnv } from "#server/base/env.ts";
import { createLog } from "#server/base/log.ts";
import type { Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { createSyncHost } from "#server/main/sync-host.ts";
import { createFills } from "#server/month-fill/fills.ts";
import { createSigningKeys } from "#server/signing/keys.ts";
import { createDocumentRooms, type DocumentRooms } from "#server/sync/document-rooms.ts";
import type { SyncHost } from "#server/sync/host.ts";
import type { Limits } from "#server/sync/limits.ts";
import type { SyncMeter } from "#server/sync/meter.ts";
import { eventually } from "./eventually.ts";
import { idleCare } from "./idle-care.ts";
import { databaseWith, tempDb } from "./temp-db.ts";
import { testChecks } from "./test-checks.ts";

export const START = Date.UTC(2026, 10, 2, 9, 0);
const ROLES = {
  ines: ["lead"],
  marta: ["coach"],
  jonas: ["trainee"],
  noor: ["trainee"],
  petra: ["manager"],
  sam: ["crew"],
} as const satisfies Record<string, readonly Role[]>;
export type Who = keyof typeof ROLES;
const WHO: readonly Who[] = ["ines", "marta", "jonas", "noor", "petra", "sam"];

export interface Announced {
  readonly name: string;
  /** To whom it was sent; nobody in particular when all get the same. */
  readonly to?: Who;
  readonly news: News;
}

export interface PlanStudio {
  readonly app: Springline;
  readonly db: Db;
  readonly people: Readonly<Record<Who, Person>>;
  readonly host: SyncHost;
  /** The live documents, for sockets to join. */
  readonly rooms: DocumentRooms;
  /** Everything announced so far, in order; a test may empty it. */
  readonly announced: Announced[];
  /** How often the rights of open pages were checked again. */
  refreshed(): number;
  /** Advances the clock. */
  advance(ms: number): void;
  /** Writes in a document as a person would, and waits until the server has checked it. */
  write(doc: DocName, who: Person, act: (w: Writer) => void): Promise<void>;
  /** What the server finds in a plan as it is on disk. */
  findings(planId: string): Promise<readonly Finding[]>;
  /** The newest announcement of one kind to one document, as `who` (Marta by default) gets it. */
  last<T extends News["t"]>(doc: DocName, t: T, who?: Who): Extract<News, { t: T }> | undefined;
  stop(): Promise<void>;
}

export interface StudioSetup {
  /** The clock's time, ms since the epoch; sessions need it close to the machine's own. */
  readonly clock?: number;
  readonly soleAuthorMaySign?: boolean;
  /** Nobody waits for their turn unless told so: a test asks more than a person does. */
  readonly limits?: Partial<Limits>;
  /** Settings that differ, such as the public address. */
  readonly env?: Partial<Env>;
  /** Measures the rooms. */
  readonly meter?: SyncMeter;
}

export const ROOMS = { harbour: "harbour", loft: "loft" } as const;

export function openStudio(setup: StudioSetup = {}): PlanStudio {
  const temp = tempDb(furnished(setup.soleAuthorMaySign ?? false));
  const db = temp.open({ synchronous: "NORMAL" });
  const env: Env = { ...readEnv("live", { SPRINGLINE_DATA: temp.folder, SPRINGLINE_LOG: "silent" }), ...setup.env };
  const log = createLog("silent");
  let at = setup.clock ?? START;
  let ids = 0;
  let refreshed = 0;
  let looked = 0;
  const announced: Announced[] = [];
  const now = () => at;
  const keys = createSigningKeys({ db, secret: env.secret, now });
  let [auth, words]: [Auth | undefined, WordIndex | undefined] = [undefined, undefined];
  const half = {
    env,
    log,
    db,
    keys,
    fills: createFills(),
    care: idleCare,
    now,
    newId: () => `id-${++ids}`,
  };
  const app: Springline = {
    ...half,
    // Few tests sign in, or look for words.
    get auth() {
      auth ??= createAuth(db, env, log);
      return auth;
    },
    get words() {
      words ??= wordIndexBeside(db);
      return words;
    },
    get documents() {
      return rooms;
    },
    get checks() {
      return checks;
    },
  };
  const checks = testChecks(app);
  const host = createSyncHost(app);
  const live = createDocumentRooms({
    db,
    host: counting(host, () => looked++),
    log,
    now,
    limits: { burstQuietMs: 1, personPercent: 100, ...setup.limits },
    ...(setup.meter ? { meter: setup.meter } : {}),
  });
  const rooms: DocumentRooms = {
    ...live,
    announce(name, news) {
      announced.push({ name: formatDocName(name), news });
      live.announce(name, news);
    },
    announceEach(name, newsFor) {
      for (const to of WHO) announced.push({ name: formatDocName(name), to, news: newsFor(to) });
      live.announceEach(name, newsFor);
    },
    refreshAccess() {
      refreshed++;
      live.refreshAccess();
    },
  };
  return {
    app,
    db,
    people: PEOPLE,
    host,
    rooms,
    announced,
    refreshed: () => refreshed,
    advance: (ms) => {
      at += ms;
    },
    async write(doc, who, act) {
      const before = looked;
      rooms.transact(doc, who.id, (d) => act({ doc: d, origin: who.id }));
      await eventually("the server looked at what was written", () => looked > before);
      await checks.idle();
    },
    async findings(planId) {
      return (await checks.now(planId))?.findings ?? [];
    },
    last(doc, t, who = "marta") {
      const name = formatDocName(doc);
      const found = announced.findLast((a) => a.name === name && a.news.t === t && (a.to ?? who) === who);
      return found?.news as Extract<News, { t: typeof t }> | undefined;
    },
    async stop() {
      await live.stop();
      await checks.stop();
      temp.remove();
    },
  };
}

/** The host, with a count of the bursts that were fully checked. */
function counting(host: SyncHost, count: () => void): SyncHost {
  const counted = (kind: "plan" | "month") => ({
    ...host.kinds[kind],
    afterChange(name: DocName, doc: Parameters<NonNullable<SyncHost["kinds"]["plan"]["afterChange"]>>[1]) {
      try {
        host.kinds[kind].afterChange?.(name, doc);
      } finally {
        count();
      }
    },
  });
  return { ...host, kinds: { plan: counted("plan"), month: counted("month") } };
}

const made = new Map<boolean, Uint8Array>();
/** The studio as each test finds it: its rows are written once, then copied. */
function furnished(soleAuthorMaySign: boolean): Uint8Array {
  const bytes = made.get(soleAuthorMaySign) ?? databaseWith((db) => furnish(db, soleAuthorMaySign));
  made.set(soleAuthorMaySign, bytes);
  return bytes;
}

function furnish(db: Db, soleAuthorMaySign: boolean): void {
  insertStudio(db, { name: "Tholepin Strength", town: "Port Ellery", soleAuthorMaySign, at: START });
  insertRoom(db, { id: ROOMS.harbour, name: "Harbour room", equipment: EQUIPMENT });
  insertRoom(db, { id: ROOMS.loft, name: "Loft", equipment: { ...EQUIPMENT, name: "Loft machines" } });
  putMove(db, "kneeling-row", MOVES.row, START);
  putMove(db, "chest-press", MOVES.press, START);
  for (const id of WHO) {
    const name = `${id.charAt(0).toUpperCase()}${id.slice(1)}`;
    const account = { id, name, email: `${id}@tholepin.example`, passwordHash: "none", roles: ROLES[id] };
    insertAccount(db, { ...account, at: START });
  }
}

const person = (id: Who): Person => ({ kind: "person", id, roles: ROLES[id] });
const PEOPLE: Readonly<Record<Who, Person>> = {
  ines: person("ines"),
  marta: person("marta"),
  jonas: person("jonas"),
  noor: person("noor"),
  petra: person("petra"),
  sam: person("sam"),
};

export const EQUIPMENT: Equipment = {
  name: "Harbour machines",
  carriageTravelMm: 1000,
  springs: [
    { id: "light", label: "light", count: 2, stiffnessNPerMm: 0.1, preloadN: 5 },
    { id: "firm", label: "firm", count: 2, stiffnessNPerMm: 0.4, preloadN: 20 },
  ],
};

const rowMove: Move = {
  name: "Kneeling row",
  station: "carriage",
  position: "kneeling",
  facing: "front",
  hands: "handles",
  feet: "carriage",
  sides: "both",
  pattern: "pull",
  muscles: { "upper-back": 1, biceps: 0.5 },
  resistance: "springs",
  tempo: { outSeconds: 2, backSeconds: 2 },
};
const pressMove: Move = {
  ...rowMove,
  name: "Kneeling press",
  facing: "back",
  pattern: "push",
  muscles: { chest: 1, triceps: 0.5 },
};
export const MOVES = { row: rowMove, press: pressMove };

/** The result of a command; a refusal fails the test. */
export function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`refused: ${result.error.code}: ${result.error.message}`);
  return result.value;
}

/** "ok", or the code of the refusal. */
export const outcome = (result: Result<unknown>): string => (result.ok ? "ok" : result.error.code);
