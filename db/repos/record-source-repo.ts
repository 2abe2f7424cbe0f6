/**
 * The rows that the record speaks of, read again for its proof and, once, to begin it: events of plans, of the studio and of
 * moves, editions, withdrawals and class logs. Each table is only added to, so its rowid is the order of its rows.
 */
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { inTransaction } from "#db/transaction.ts";
import type { SourceKey } from "#lib/record/entries.ts";
import { FIRST_SOURCES, SOURCE_NAMES, type SourceColumns, type SourceName } from "#lib/record/sources.ts";
import { addSourceToRecord, addToRecord, findRecord, recordHead } from "./record-repo.ts";

/** A stored row and its place among the rows of its table. */
export interface SourceRow<N extends SourceName = SourceName> {
  readonly place: number;
  readonly columns: SourceColumns[N];
}

interface Table {
  readonly from: string;
  readonly columns: string;
  /** Finds one row by the key of an entry. */
  readonly where: string;
  /** ms since the epoch. */
  readonly at: string;
  /** How a fault names a row. */
  readonly name: string;
}

const EVENT = { where: "id = @row", at: "at" };
const TABLES: Readonly<Record<SourceName, Table>> = {
  "plan event": {
    ...EVENT,
    from: "plan_event",
    columns: "id, plan_id AS planId, at, actor_id AS actorId, kind, note, hash",
    name: "'Plan event ' || id",
  },
  "studio event": {
    ...EVENT,
    from: "studio_event",
    columns: "id, at, actor_id AS actorId, kind, subject, data_json AS dataJson",
    name: "'Studio event ' || id",
  },
  "move event": {
    ...EVENT,
    from: "move_event",
    columns: "id, move_id AS moveId, at, actor_id AS actorId, kind, data_json AS dataJson",
    name: "'Event ' || id || ' of the library'",
  },
  edition: {
    from: "edition",
    columns: `plan_id AS planId, number, hash, plan_json AS planJson, card_json AS cardJson, findings_json AS findingsJson,
      signed_by AS signedBy, signed_at AS signedAt, note, accepted_json AS acceptedJson, round`,
    where: "plan_id = @planId AND number = @number",
    at: "signed_at",
    name: "'Edition ' || number || ' of plan ' || plan_id",
  },
  withdrawal: {
    from: "edition_withdrawal",
    columns: "plan_id AS planId, number, withdrawn_by AS withdrawnBy, withdrawn_at AS withdrawnAt, reason",
    where: "plan_id = @planId AND number = @number",
    at: "withdrawn_at",
    name: "'The withdrawal of edition ' || number || ' of plan ' || plan_id",
  },
  "class log": {
    from: "class_log",
    columns: `session_id AS sessionId, plan_id AS planId, number, room_id AS roomId, device_id AS deviceId, kind,
      started_at AS startedAt, received_at AS receivedAt, log_json AS logJson`,
    where: "session_id = @session",
    at: "received_at",
    name: "'Class log ' || session_id",
  },
  moment: {
    ...EVENT,
    from: "plan_moment",
    columns: `id, plan_id AS planId, round, kind, at, actor_id AS actorId, note, hash, findings_json AS findingsJson,
      threads_json AS threadsJson, (SELECT plan_json FROM plan_text AS text
        WHERE text.plan_id = plan_moment.plan_id AND text.hash = plan_moment.hash) AS planJson`,
    name: "'Moment ' || id",
  },
  marks: {
    from: "marks",
    columns: `id, user_id AS userId, plan_id AS planId, round, session_id AS sessionId, by_id AS byId, at,
      rubric_json AS rubricJson, levels_json AS levelsJson, sentence`,
    where: "id = @id",
    at: "at",
    name: "'Marks ' || id",
  },
  acceptance: {
    from: "acceptance",
    columns: `id, plan_id AS planId, rule_id AS ruleId, finding_key AS findingKey, message, reason, by_id AS byId, at`,
    where: "id = @id",
    at: "at",
    name: "'Accepted finding ' || id",
  },
  "month edition": {
    from: "month_edition",
    columns: `month, number, hash, file_json AS fileJson, findings_json AS findingsJson, accepted_json AS acceptedJson,
      signed_by AS signedBy, signed_at AS signedAt, note`,
    where: "month = @month AND number = @edition",
    at: "signed_at",
    name: "'Edition ' || number || ' of the month ' || month",
  },
  "class log remark": {
    ...EVENT,
    from: "class_log_remark",
    columns: "id, session_id AS sessionId, kind, coach_id AS coachId, reason, actor_id AS actorId, at",
    name: "'Remark ' || id || ' on a class log'",
  },
};

type Placed = SourceColumns[SourceName] & { readonly place: number };

const statements = oncePerDatabase(({ raw }) => {
  const of = (name: SourceName) => {
    const { from, columns, where, at, name: words } = TABLES[name];
    return {
      one: raw.prepare<[object], Placed>(`SELECT rowid AS place, ${columns} FROM ${from} WHERE ${where}`),
      next: raw.prepare<[number | bigint], Placed & { readonly happened: number }>(
        `SELECT rowid AS place, ${at} AS happened, ${columns} FROM ${from} WHERE rowid > ? ORDER BY rowid LIMIT 1`,
      ),
      between: raw
        .prepare<[bigint, bigint], string>(`SELECT ${words} FROM ${from} WHERE rowid > ? AND rowid < ? LIMIT 1`)
        .pluck(),
      count: raw.prepare<[], number>(`SELECT count(*) FROM ${from}`).pluck(),
    };
  };
  return Object.fromEntries(SOURCE_NAMES.map((name) => [name, of(name)])) as Record<SourceName, ReturnType<typeof of>>;
});

/** The row that an entry is about; undefined when it is not there. */
export function readSource(db: Db, key: SourceKey): SourceRow | undefined {
  const { of, ...columns } = key;
  const found = statements(db)[of].one.get(columns);
  return found && split(found);
}

/** A place may be any 64-bit number, also one below 0, which a number of JavaScript does not hold. */
const FIRST_PLACE = -(2n ** 63n);
const LAST_PLACE = 2n ** 63n - 1n;

/**
 * The name of the first row between two places of a table, as "Plan event 12"; undefined when there is none. Null: from its
 * beginning, or to its end.
 */
export const sourceBetween = (db: Db, name: SourceName, after: number | null, before: number | null) =>
  statements(db)[name].between.get(
    after === null ? FIRST_PLACE : BigInt(after),
    before === null ? LAST_PLACE : BigInt(before),
  );

function split({ place, ...columns }: Placed): SourceRow {
  return { place, columns: columns as SourceColumns[SourceName] };
}

/**
 * Begins the record of a database: one row that says so, then everything that was stored before there was a record, in order
 * of time. A record that has begun is given the tables that an older program did not put into it. One transaction.
 */
export function beginRecord(db: Db, at: number): void {
  inTransaction(db, () => {
    const begun = recordHead(db).seq > 0;
    const tables = begun ? notYetRecorded(db) : SOURCE_NAMES;
    if (tables.length === 0) return;
    const counts = tables.map((name) => [name, statements(db)[name].count.get() ?? 0] as const);
    const earlier = Object.fromEntries(counts.filter(([, count]) => count > 0));
    const kind = begun ? "tables-added" : "begun";
    addToRecord(db, { at, actorId: "server", subject: "studio", kind, body: { earlier, tables } });
    const streams = tables.map((name) => earlierRows(db, name));
    for (let first = earliest(streams); first; first = earliest(streams)) first.take();
  });
}

/** Tables that no row of the record says it speaks of. The first records did not name theirs. */
function notYetRecorded(db: Db): SourceName[] {
  const rows = findRecord(
    db,
    { subject: "studio", kinds: ["begun", "tables-added"] },
    { after: 0, before: recordHead(db).seq + 1, limit: 100 },
  );
  const named = rows.flatMap(({ bodyJson }) => (JSON.parse(bodyJson) as { tables?: SourceName[] }).tables ?? []);
  const told = new Set<SourceName>([...FIRST_SOURCES, ...named]);
  return SOURCE_NAMES.filter((name) => !told.has(name));
}

interface Stream {
  /** When the next row happened, ms since the epoch; null at the end. */
  readonly at: number | null;
  take(): void;
}

/** The rows of one table keep their order, also where a clock was set back. */
function earlierRows<N extends SourceName>(db: Db, name: N): Stream {
  let next = statements(db)[name].next.get(FIRST_PLACE);
  return {
    get at() {
      return next?.happened ?? null;
    },
    take() {
      if (!next) return;
      const { place, happened: _, ...columns } = next;
      addSourceToRecord(db, name, columns as unknown as SourceColumns[N]);
      next = statements(db)[name].next.get(place);
    },
  };
}

function earliest(streams: readonly Stream[]): Stream | undefined {
  let first: Stream | undefined;
  for (const stream of streams) if (stream.at !== null && (!first || stream.at < (first.at ?? 0))) first = stream;
  return first;
}
