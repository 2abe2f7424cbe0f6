/**
 * The words of all plans, in a file of its own beside the database: a cache that can be thrown away, so it is in no backup
 * and has no migrations. A file of another layout, or a damaged one, is made anew; the plans are then read again.
 *
 * Lines stand in a table; their words, folded by `lib/find`, in SQLite's own full-text index (FTS5), which finds words by
 * their beginnings. The index holds no text of its own.
 */
import { chmodSync, existsSync, rmSync } from "node:fs";
import Database from "better-sqlite3";
import type { Db } from "#db/connection.ts";
import { type FindableLine, LINE_PLACES, type LinePlace } from "#lib/find/plan-lines.ts";
import { type AskedWord, textWords } from "#lib/find/words.ts";

/** Raise it with the layout, and with what counts as a word. */
const LAYOUT = 1;

/** The state of the document that was read: the history of its log and the last row of it. */
export interface ReadUpTo {
  readonly generation: string;
  readonly seq: number;
}

export interface PlanLines extends ReadUpTo {
  readonly planId: string;
  readonly lines: readonly FindableLine[];
}

/** A plan that has the words. */
export interface FoundInIndex {
  readonly planId: string;
  /** The first of `LINE_PLACES` with all words in one line; null where they stand in several lines only. */
  readonly place: LinePlace | null;
  /** How many lines have all words. */
  readonly count: number;
}

export interface WordIndex {
  /** Only what differs from before is written. Throws when the file cannot be written. */
  put(plan: PlanLines): void;
  drop(planId: string): void;
  /** Up to where each plan is read, by id. */
  readUpTo(): ReadonlyMap<string, ReadUpTo>;
  /** Those of `planIds` that have all words, in no order. */
  find(asked: readonly AskedWord[], planIds: readonly string[]): FoundInIndex[];
  /** Of each of these plans up to `most` lines with all words, the best places first. */
  linesWith(asked: readonly AskedWord[], planIds: readonly string[], most: number): ReadonlyMap<string, FindableLine[]>;
  close(): void;
}

/** Where the index of a database is. */
export const wordIndexFile = (databaseFile: string): string => `${databaseFile.replace(/\.sqlite$/, "")}.words`;

/** The index beside an open database, or an empty one; it closes with the database. */
export function wordIndexBeside(db: Pick<Db, "file" | "onClose">): WordIndex {
  const index = openWordIndex(db.file);
  db.onClose(() => index.close());
  return index;
}

function openWordIndex(databaseFile: string): WordIndex {
  const file = wordIndexFile(databaseFile);
  try {
    return indexIn(opened(file));
  } catch {
    // Damaged, or not ours: nothing is lost with it.
    removeWordIndex(databaseFile);
    return indexIn(opened(file));
  }
}

export function removeWordIndex(databaseFile: string): void {
  const file = wordIndexFile(databaseFile);
  for (const end of ["", "-wal", "-shm", "-journal"]) rmSync(`${file}${end}`, { force: true });
}

function opened(file: string): Database.Database {
  const raw = new Database(file);
  try {
    raw.pragma("journal_mode = WAL");
    // What a power cut takes is read again from the plans.
    raw.pragma("synchronous = NORMAL");
    raw.pragma("busy_timeout = 200");
    for (const end of ["", "-wal", "-shm"]) if (existsSync(`${file}${end}`)) chmodSync(`${file}${end}`, 0o600);
    if (raw.pragma("user_version", { simple: true }) !== LAYOUT) raw.transaction(() => layOut(raw))();
    return raw;
  } catch (error) {
    raw.close();
    throw error;
  }
}

function layOut(raw: Database.Database): void {
  const old = raw.prepare<[], string>(
    "select name from sqlite_master where type = 'table' and name not like '%\\_%' escape '\\'",
  );
  for (const name of old.pluck().all()) raw.exec(`drop table if exists "${name}"`);
  raw.exec(`
    create table plan (id text primary key, generation text not null, seq integer not null) without rowid;
    create table line (id integer primary key, plan text not null, place integer not null, item text, line integer not null, text text not null);
    create index line_of_plan on line (plan);
    create virtual table word using fts5(words, content='', contentless_delete=1, detail=none, tokenize='ascii', prefix='2 3');
  `);
  raw.pragma(`user_version = ${LAYOUT}`);
}

interface LineRow {
  readonly id: number;
  readonly place: number;
  readonly item: string | null;
  readonly line: number;
  readonly text: string;
}

function prepared(raw: Database.Database) {
  return {
    read: raw.prepare<[], { id: string } & ReadUpTo>("select id, generation, seq from plan"),
    plan: raw.prepare<[string, string, number]>("insert or replace into plan (id, generation, seq) values (?, ?, ?)"),
    noPlan: raw.prepare<[string]>("delete from plan where id = ?"),
    lines: raw.prepare<[string], LineRow>("select id, place, item, line, text from line where plan = ?"),
    line: raw.prepare<[string, number, string | null, number, string]>(
      "insert into line (plan, place, item, line, text) values (?, ?, ?, ?, ?)",
    ),
    noLine: raw.prepare<[number]>("delete from line where id = ?"),
    words: raw.prepare<[number | bigint, string]>("insert into word (rowid, words) values (?, ?)"),
    noWords: raw.prepare<[number]>("delete from word where rowid = ?"),
    counts: raw.prepare<[string, string], { plan: string; count: number; place: number }>(
      `select line.plan, count(*) as count, min(place) as place from word join line on line.id = word.rowid
       where word match ? and line.plan in (select value from json_each(?)) group by line.plan`,
    ),
    best: raw.prepare<[string, string, number], LineRow & { plan: string }>(
      `select * from (
         select line.*, row_number() over (partition by plan order by place, line.id) as nth
         from word join line on line.id = word.rowid
         where word match ? and line.plan in (select value from json_each(?))
       ) where nth <= ? order by plan, nth`,
    ),
  };
}

function indexIn(raw: Database.Database): WordIndex {
  const s = prepared(raw);
  const drop = (planId: string) => {
    for (const { id } of s.lines.all(planId)) {
      s.noLine.run(id);
      s.noWords.run(id);
    }
    s.noPlan.run(planId);
  };
  return {
    put: raw.transaction(({ planId, generation, seq, lines }: PlanLines) => {
      const wanted = new Map(lines.map((line) => [keyOf(line), line]));
      for (const row of s.lines.all(planId)) {
        if (wanted.delete(keyOf(lineOf(row)))) continue;
        s.noLine.run(row.id);
        s.noWords.run(row.id);
      }
      for (const { place, itemId, line, text } of wanted.values()) {
        const { lastInsertRowid } = s.line.run(planId, LINE_PLACES.indexOf(place), itemId, line, text);
        s.words.run(lastInsertRowid, wordsToKeep(text));
      }
      s.plan.run(planId, generation, seq);
    }),
    drop: raw.transaction(drop),
    readUpTo: () => new Map(s.read.all().map(({ id, generation, seq }) => [id, { generation, seq }])),
    find: (asked, planIds) => (asked.length === 0 ? [] : findIn(s, asked, JSON.stringify(planIds))),
    linesWith: (asked, planIds, most) => (asked.length === 0 ? new Map() : linesIn(s, asked, { planIds, most })),
    close: () => raw.close(),
  };
}

const keyOf = ({ place, itemId, line, text }: FindableLine): string => `${place} ${itemId} ${line} ${text}`;
const lineOf = ({ place, item, line, text }: LineRow): FindableLine => ({
  place: LINE_PLACES[place] as LinePlace,
  itemId: item,
  line,
  text,
});

/** Both forms of each word, once. */
const wordsToKeep = (text: string): string =>
  [...new Set(textWords(text).flatMap(({ bare, fold }) => [bare, fold]))].join(" ");

/** Words are letters and digits alone, so nothing in them is read as a sign of the query. */
const matching = ({ bare, fold }: AskedWord): string =>
  bare === fold ? `"${bare}" *` : `("${bare}" * OR "${fold}" *)`;

const together = (asked: readonly AskedWord[]): string => asked.map(matching).join(" AND ");

type Statements = ReturnType<typeof prepared>;

function findIn(s: Statements, asked: readonly AskedWord[], ids: string): FoundInIndex[] {
  const inOne = s.counts.all(together(asked), ids);
  const known = new Set(inOne.map(({ plan }) => plan));
  const apart = asked.length === 1 ? [] : haveEach(s, asked, ids).filter((planId) => !known.has(planId));
  return [
    ...inOne.map(({ plan, count, place }) => ({ planId: plan, count, place: LINE_PLACES[place] as LinePlace })),
    ...apart.map((planId) => ({ planId, count: 0, place: null })),
  ];
}

/** Plans that have each of the words somewhere. */
function haveEach(s: Statements, asked: readonly AskedWord[], ids: string): string[] {
  const sets = asked.map((one) => new Set(s.counts.all(matching(one), ids).map(({ plan }) => plan)));
  const [first = new Set<string>(), ...others] = sets;
  return [...first].filter((planId) => others.every((plans) => plans.has(planId)));
}

interface Among {
  readonly planIds: readonly string[];
  readonly most: number;
}

function linesIn(s: Statements, asked: readonly AskedWord[], { planIds, most }: Among): Map<string, FindableLine[]> {
  const found = new Map<string, FindableLine[]>();
  for (const row of s.best.all(together(asked), JSON.stringify(planIds), most))
    found.set(row.plan, [...(found.get(row.plan) ?? []), lineOf(row)]);
  return found;
}
