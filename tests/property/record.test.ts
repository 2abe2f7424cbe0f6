/**
 * The record's proof on a real database: any one row changed, removed, inserted or moved, in the record or in what it is
 * about, is found, and the first row that does not hold is named.
 */
import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { addToRecord, listRecord, recordHead } from "#db/repos/record-repo.ts";
import { canonicalJson, sha256Hex } from "#lib/canonical/canonical.ts";
import { FIRST_PREVIOUS, type RecordRow, rowHash } from "#lib/record/chain.ts";
import { sourceKeyOf } from "#lib/record/entries.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import { often } from "#tests/support/long.ts";
import { type RecordedStudio, recordedStudio } from "#tests/support/recorded-studio.ts";

const RUNS = often(200, 3000);
const RECORD_COLUMNS = ["at", "actor_id", "subject", "kind", "body_json", "previous_hash", "hash"] as const;
const TABLES = {
  plan_event: "plan event",
  studio_event: "studio event",
  move_event: "move event",
  edition: "edition",
  edition_withdrawal: "withdrawal",
  class_log: "class log",
  plan_moment: "moment",
  marks: "marks",
  acceptance: "acceptance",
  month_edition: "month edition",
  class_log_remark: "class log remark",
} as const;
/** Who ended an acceptance is told by another entry. */
const TOLD_ELSEWHERE: readonly string[] = ["ended_by", "ended_at"];
type TableName = keyof typeof TABLES;

let s: RecordedStudio;
let rows: RecordRow[] = [];
beforeAll(async () => {
  s = await recordedStudio();
  rows = listRecord(s.db, 0, 1000);
  const triggers = s.db.raw.prepare<[], string>("SELECT name FROM sqlite_master WHERE type = 'trigger'").pluck().all();
  for (const name of triggers) s.db.raw.exec(`DROP TRIGGER ${name}`);
}, 60_000);
afterAll(() => s.stop());

/** The proof after `tamper`; everything is undone afterwards. */
function provedAfter(tamper: () => void, printed?: { seq: number; hash: string }) {
  s.db.raw.exec("BEGIN");
  try {
    tamper();
    return proveRecord(s.db, printed);
  } finally {
    s.db.raw.exec("ROLLBACK");
  }
}
const sql = (text: string, ...given: unknown[]) => s.db.raw.prepare(text).run(...given);
const faultAt = (seq: number | null) => ({ holds: false, fault: { seq, say: expect.stringMatching(/\w/) } });

/** Makes room for one row before `seq`, or closes its gap. */
function shift(from: number, by: 1 | -1): void {
  sql("UPDATE record SET seq = -seq WHERE seq >= ?", from);
  sql("UPDATE record SET seq = -seq + ? WHERE seq < 0", by);
}
const insert = (row: RecordRow) =>
  sql(
    "INSERT INTO record (seq, at, actor_id, subject, kind, body_json, previous_hash, hash) VALUES (@seq, @at, @actorId, @subject, @kind, @bodyJson, @previousHash, @hash)",
    row,
  );
const other = (value: unknown): unknown => (typeof value === "number" ? value + 1 : `${value ?? ""}x`);
const rowAt = (seq: number) => rows[seq - 1] as RecordRow;

const anyRow = () => fc.integer({ min: 1, max: rows.length });

test("[INV-26] the record of a studio at work holds, and every row of every table stands in it once", () => {
  expect(proveRecord(s.db)).toEqual({ holds: true, head: recordHead(s.db) });
  expect(rows.length).toBeGreaterThan(20);
  for (const [table, of] of Object.entries(TABLES)) {
    const stored = s.db.raw.prepare<[], number>(`SELECT count(*) FROM ${table}`).pluck().get();
    expect(stored, table).toBeGreaterThan(0);
    expect(rows.filter((row) => sourceKeyOf(row)?.of === of).length, table).toBe(stored);
  }
});

test(`[INV-26] ${RUNS} single changes of a row: that row is named`, () => {
  const change = fc.tuple(anyRow(), fc.constantFrom(...RECORD_COLUMNS));
  fc.assert(
    fc.property(change, ([seq, column]) => {
      const before = s.db.raw.prepare<[number]>(`SELECT ${column} FROM record WHERE seq = ?`).pluck().get(seq);
      const proof = provedAfter(() => sql(`UPDATE record SET ${column} = ? WHERE seq = ?`, other(before), seq));
      expect(proof).toMatchObject(faultAt(seq));
    }),
    { numRuns: RUNS, seed: 26 },
  );
});

test(`[INV-26] ${RUNS} rows removed, with the gap left or closed: the first that fails is named`, () => {
  fc.assert(
    fc.property(anyRow(), fc.boolean(), (seq, close) => {
      const proof = provedAfter(() => {
        sql("DELETE FROM record WHERE seq = ?", seq);
        if (close && seq < rows.length) shift(seq + 1, -1);
      });
      expect(proof).toMatchObject(faultAt(seq));
    }),
    { numRuns: RUNS, seed: 27 },
  );
});

test(`[INV-26] ${RUNS} rows inserted, one with a sound hash of its own too`, () => {
  const place = fc.tuple(fc.integer({ min: 1, max: rows.length + 1 }), fc.boolean());
  fc.assert(
    fc.property(place, ([seq, sound]) => {
      const previousHash = seq === 1 ? FIRST_PREVIOUS : rowAt(seq - 1).hash;
      const forged = { seq, at: 5, actorId: "x", subject: "studio", kind: "k", bodyJson: "{}", previousHash };
      const proof = provedAfter(() => {
        shift(seq, 1);
        insert({ ...forged, hash: sound ? rowHash(forged) : sha256Hex(String(seq)) });
      });
      // A row with a sound hash continues the one before; what stood there no longer continues anything.
      expect(proof).toMatchObject(faultAt(sound && seq <= rows.length ? seq + 1 : seq));
    }),
    { numRuns: RUNS, seed: 28 },
  );
});

test(`[INV-26] ${RUNS} pairs of rows exchanged: the first of the two is named`, () => {
  const pair = fc.tuple(anyRow(), anyRow()).filter(([a, b]) => a !== b);
  fc.assert(
    fc.property(pair, ([a, b]) => {
      const proof = provedAfter(() => {
        sql("UPDATE record SET seq = -1 WHERE seq = ?", a);
        sql("UPDATE record SET seq = ? WHERE seq = ?", a, b);
        sql("UPDATE record SET seq = ? WHERE seq = -1", b);
      });
      expect(proof).toMatchObject(faultAt(Math.min(a, b)));
    }),
    { numRuns: RUNS, seed: 29 },
  );
});

test("[INV-26] every column of every row that the record is about: a change is found at its entry", () => {
  for (const table of Object.keys(TABLES) as TableName[]) {
    const stored = s.db.raw.prepare<[], Record<string, unknown>>(`SELECT rowid AS place, * FROM ${table}`).all();
    for (const { place, ...columns } of stored) {
      const seq = seqOf(table, columns);
      for (const [column, value] of Object.entries(columns)) {
        if (TOLD_ELSEWHERE.includes(column)) continue;
        const proof = provedAfter(() =>
          sql(`UPDATE ${table} SET ${column} = ? WHERE rowid = ?`, changed(column, value), place),
        );
        expect(proof, `${table}.${column} of row ${place}`).toMatchObject(faultAt(seq));
      }
      const gone = provedAfter(() => sql(`DELETE FROM ${table} WHERE rowid = ?`, place));
      expect(gone, `${table} without row ${place}`).toMatchObject(faultAt(seq));
    }
  }
});

/** A key becomes one that nothing has; a space in JSON changes its bytes alone. */
function changed(column: string, value: unknown): unknown {
  if (column === "id" || column === "number") return 900_000;
  return column.endsWith("_json") && typeof value === "string" ? ` ${value}` : other(value ?? 7);
}

/** The row of the record about a stored row, found without the proof's own way of looking. */
function seqOf(table: TableName, columns: Record<string, unknown>): number {
  const found = rows.find(({ subject, bodyJson }) => {
    const body = JSON.parse(bodyJson);
    if (body.of !== TABLES[table]) return false;
    if (table === "edition" || table === "edition_withdrawal")
      return body.number === columns.number && subject === `plan/${columns.plan_id}`;
    if (table === "month_edition") return body.edition === columns.number;
    if (table === "class_log") return body.session === columns.session_id;
    return (body.row ?? body.id) === columns.id;
  });
  if (!found) throw new Error(`no entry for ${canonicalJson(columns)}`);
  return found.seq;
}

test("[INV-26] a last row that was removed or replaced stays found when work goes on", () => {
  const last = rows.length;
  const more = () => addToRecord(s.db, { at: 1, actorId: "ines", subject: "studio", kind: "rubric", body: {} });
  const removed = provedAfter(() => {
    sql("DELETE FROM record WHERE seq = ?", last);
    more();
    more();
  });
  expect(removed).toMatchObject(faultAt(last));
  const replaced = provedAfter(() => {
    const forged = { ...rowAt(last), actorId: "somebody" };
    sql("UPDATE record SET actor_id = ?, hash = ? WHERE seq = ?", forged.actorId, rowHash(forged), last);
    more();
  });
  expect(replaced.holds).toBe(false);
});

test("[INV-26] a row that was put into a table behind the record's back is named", () => {
  const tries = [
    "INSERT INTO plan_event (plan_id, at, actor_id, kind) VALUES ('p', 1, 'x', 'signed-off')",
    "INSERT INTO edition SELECT plan_id, 2, hash, plan_json, card_json, findings_json, signed_by, signed_at, note, accepted_json, round FROM edition",
    // Below the first place that is given by itself, and beyond what a number of JavaScript holds.
    "INSERT INTO plan_event (id, plan_id, at, actor_id, kind) VALUES (-1, 'p', 1, 'x', 'signed-off')",
    "INSERT INTO plan_event (id, plan_id, at, actor_id, kind) VALUES (0, 'p', 1, 'x', 'signed-off')",
    "INSERT INTO plan_event (id, plan_id, at, actor_id, kind) VALUES (9007199254740993, 'p', 1, 'x', 'signed-off')",
    "INSERT INTO edition_withdrawal (rowid, plan_id, number, withdrawn_by, withdrawn_at, reason) VALUES (-1, 'p', 9, 'x', 1, 'forged')",
    "INSERT INTO move_event (move_id, at, actor_id, kind, data_json) VALUES ('m', 1, 'x', 'added', '{}')",
  ];
  for (const text of tries) {
    const proof = provedAfter(() => sql(text));
    expect(proof, text).toMatchObject(faultAt(null));
    expect(proof).toMatchObject({ fault: { say: expect.stringContaining("the record does not hold it") } });
  }
});

test(`[INV-26] ${often(50, 300)} chains rewritten from a row on hold by themselves, and not against a printed head`, () => {
  const own = rows.filter((row) => sourceKeyOf(row) === null).map(({ seq }) => seq);
  const printed = recordHead(s.db);
  fc.assert(
    fc.property(fc.constantFrom(...own), (seq) => {
      const rewrite = () => {
        sql("UPDATE record SET actor_id = 'somebody' WHERE seq = ?", seq);
        let previousHash = seq === 1 ? FIRST_PREVIOUS : rowAt(seq - 1).hash;
        for (const row of listRecord(s.db, seq - 1, 1000)) {
          const hash = rowHash({ ...row, previousHash });
          sql("UPDATE record SET previous_hash = ?, hash = ? WHERE seq = ?", previousHash, hash, row.seq);
          previousHash = hash;
        }
        const end = canonicalJson({ seq: rows.length, hash: previousHash });
        sql("UPDATE studio_setting SET data_json = ? WHERE name = 'record-head'", end);
      };
      expect(provedAfter(rewrite)).toMatchObject({ holds: true });
      expect(provedAfter(rewrite, printed)).toMatchObject(faultAt(printed.seq));
      // A head from before the row that was touched is still in the chain.
      if (seq > 1) expect(provedAfter(rewrite, rowAt(seq - 1))).toMatchObject({ holds: true });
    }),
    { numRuns: often(50, 300), seed: 30 },
  );
});

test("[INV-26] a printed head beyond the end is missed", () => {
  expect(proveRecord(s.db, { seq: rows.length + 3, hash: "0".repeat(64) })).toMatchObject(faultAt(rows.length + 1));
  for (const row of rows) expect(proveRecord(s.db, row).holds).toBe(true);
});
