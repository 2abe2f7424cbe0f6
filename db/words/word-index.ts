/**
 * The words of all plans, in a file of its own beside the database: a cache that can be thrown away, so it is in no backup
 * and has no migrations. A file of another layout, or a damaged one, is made anew; the plans are then read again.
 *
 * Lines stand in a table; their words, folded by `lib/find`, in SQLite's own full-text index (FTS5), which finds words by
 * their beginnings. The index holds no text of its own. A line's number says which plan it is of and in which place it
 * stands, so that counting asks the index alone.
 */
import { chmodSync, existsSync, rmSync } from "node:fs";
import Database from "better-sqlite3";
import type { Db } from "#db/connection.ts";
import { emptyLog } from "#db/file/checkpoints.ts";
import { type FindableLine, LINE_PLACES, type LinePlace } from "#lib/find/plan-lines.ts";
import { type SoughtWord, textWords } from "#lib/find/words.ts";

/** Raise it with the layout, and with what counts as a word. */
const LAYOUT = 2;

/** The state of the document that was read: the history of its log and the last row of it. */
interface ReadUpTo {
  readonly generation: string;
  readonly seq: number;
}

interface PlanLines extends ReadUpTo {
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
  /**
   * Only what differs from before is written, and where that is much, the rest of it in the next turns of the event loop, so
   * that nobody waits for it. Throws when the file cannot be written.
   */
  put(plan: PlanLines): void;
  drop(planId: string): void;
  /** Drops plans that were deleted for good and leaves nothing of their words in the file. Rewrites the whole index. */
  erase(planIds: readonly string[]): void;
  /** Up to where each plan is read, by id. */
  readUpTo(): ReadonlyMap<string, ReadUpTo>;
  /** Those of `planIds` that have all words, in no order; where many have them in one line, those alone. */
  find(asked: readonly SoughtWord[], planIds: readonly string[]): FoundInIndex[];
  /** Of each of these plans up to `most` lines with all words, the best places first. */
  linesWith(
    asked: readonly SoughtWord[],
    planIds: readonly string[],
    most: number,
  ): ReadonlyMap<string, FindableLine[]>;
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
    raw.pragma("secure_delete = ON");
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
    create table plan (no integer primary key, id text not null unique, generation text not null, seq integer not null);
    create table line (no integer primary key, item text, line integer not null, text text not null);
    create virtual table word using fts5(words, content='', contentless_delete=1, detail=none, tokenize='ascii', prefix='2 3');
  `);
  raw.pragma(`user_version = ${LAYOUT}`);
}

/** A line's number: its plan's times this, and its place times the other, and a number within the two. */
const PLAN_STEP = 2 ** 20;
const PLACE_STEP = 2 ** 16;
const placeOf = (no: number): LinePlace =>
  LINE_PLACES[Math.floor(no / PLACE_STEP) % (PLAN_STEP / PLACE_STEP)] as LinePlace;

interface LineRow {
  readonly no: number;
  readonly item: string | null;
  readonly line: number;
  readonly text: string;
}
interface CountRow {
  readonly planNo: number;
  readonly count: number;
  readonly first: number;
}

function prepared(raw: Database.Database) {
  return {
    read: raw.prepare<[], { id: string; no: number } & ReadUpTo>("select id, no, generation, seq from plan"),
    planNo: raw.prepare<[string], number>("select no from plan where id = ?").pluck(),
    plan: raw.prepare<[string, string, number]>(
      `insert into plan (id, generation, seq) values (?, ?, ?)
       on conflict (id) do update set generation = excluded.generation, seq = excluded.seq`,
    ),
    noPlan: raw.prepare<[string]>("delete from plan where id = ?"),
    lines: raw.prepare<[number, number], LineRow>("select no, item, line, text from line where no >= ? and no < ?"),
    line: raw.prepare<[number, string | null, number, string]>(
      "insert into line (no, item, line, text) values (?, ?, ?, ?)",
    ),
    noLine: raw.prepare<[number]>("delete from line where no = ?"),
    words: raw.prepare<[number, string]>("insert into word (rowid, words) values (?, ?)"),
    /** Without what was deleted: an index without text only marks it, and its own secure deletion does not reach it. */
    pack: raw.prepare<[]>("insert into word (word) values ('optimize')"),
    noWords: raw.prepare<[number]>("delete from word where rowid = ?"),
    counts: raw.prepare<[string, string], CountRow>(
      `select rowid / ${PLAN_STEP} as planNo, count(*) as count, min(rowid) as first from word
       where word match ? and rowid / ${PLAN_STEP} in (select value from json_each(?)) group by planNo`,
    ),
    /** In the order of their numbers, so the best places of each plan first. One by one, each plan would cost the whole search. */
    best: raw.prepare<[string, string, number], LineRow>(
      `select no, item, line, text from (
         select rowid, row_number() over (partition by rowid / ${PLAN_STEP} order by rowid) as nth from word
         where word match ? and rowid / ${PLAN_STEP} in (select value from json_each(?))
       ) as found join line on line.no = found.rowid where nth <= ? order by no`,
    ),
  };
}
type Statements = ReturnType<typeof prepared>;

function indexIn(raw: Database.Database): WordIndex {
  const s = prepared(raw);
  const parts = inParts(raw.transaction((plan: PlanLines) => putIn(s, plan)));
  const drop = raw.transaction((planId: string) => {
    parts.stop(planId);
    for (const { no } of linesOf(s, s.planNo.get(planId))) forget(s, no);
    s.noPlan.run(planId);
  });
  const dropAll = raw.transaction((planIds: readonly string[]) => {
    for (const planId of planIds) drop(planId);
    s.pack.run();
  });
  return {
    put: parts.put,
    drop,
    erase(planIds) {
      dropAll(planIds);
      emptyLog(raw);
    },
    readUpTo: () => new Map(s.read.all().map(({ id, generation, seq }) => [id, { generation, seq }])),
    find: (asked, planIds) => (asked.length === 0 ? [] : findIn(s, asked, planIds)),
    linesWith: (asked, planIds, most) => (asked.length === 0 ? new Map() : linesIn(s, asked, { planIds, most })),
    close() {
      parts.end();
      raw.close();
    },
  };
}

/** Calls `putPart` until it has written a plan whole, once in each turn of the event loop. */
function inParts(putPart: (plan: PlanLines) => boolean) {
  const unfinished = new Map<string, PlanLines>();
  let turn: NodeJS.Immediate | undefined;
  const goOn = (): void => {
    turn = undefined;
    const [next] = unfinished.values();
    try {
      if (next) put(next);
    } catch {
      // The plan is not marked as read, so it is read again when somebody next looks for words.
    }
    if (unfinished.size > 0) turn ??= setImmediate(goOn);
  };
  const put = (plan: PlanLines): void => {
    unfinished.delete(plan.planId);
    if (putPart(plan)) return;
    unfinished.set(plan.planId, plan);
    turn ??= setImmediate(goOn);
  };
  return { put, stop: (planId: string) => unfinished.delete(planId), end: () => clearImmediate(turn) };
}

const linesOf = (s: Statements, planNo: number | undefined): LineRow[] =>
  planNo === undefined ? [] : s.lines.all(planNo * PLAN_STEP, (planNo + 1) * PLAN_STEP);

function forget(s: Statements, no: number): void {
  s.noLine.run(no);
  s.noWords.run(no);
}

/** Lines that are written in one turn of the event loop: about a millisecond. */
const MOST_AT_ONCE = 40;
/** Of a plan that is not yet written whole; no row of a log has that number. */
const UNFINISHED = -1;

/** Returns whether all of it is written now. */
function putIn(s: Statements, { planId, generation, seq, lines }: PlanLines): boolean {
  s.plan.run(planId, generation, UNFINISHED);
  const planNo = s.planNo.get(planId) ?? 0;
  const wanted = new Map(lines.map((line) => [keyOf(line), line]));
  const taken = new Set<number>();
  for (const row of linesOf(s, planNo)) {
    if (wanted.delete(keyOf(lineOf(row)))) taken.add(row.no);
    else forget(s, row.no);
  }
  let most = MOST_AT_ONCE;
  for (const { place, itemId, line, text } of wanted.values()) {
    if (most-- === 0) return false;
    let no = planNo * PLAN_STEP + LINE_PLACES.indexOf(place) * PLACE_STEP;
    while (taken.has(no)) no++;
    taken.add(no);
    s.line.run(no, itemId, line, text);
    s.words.run(no, wordsToKeep(text));
  }
  s.plan.run(planId, generation, seq);
  return true;
}

const keyOf = ({ place, itemId, line, text }: FindableLine): string => `${place} ${itemId} ${line} ${text}`;
const lineOf = ({ no, item, line, text }: LineRow): FindableLine => ({ place: placeOf(no), itemId: item, line, text });

/** Both forms of each word, once. */
const wordsToKeep = (text: string): string =>
  [...new Set(textWords(text).flatMap(({ bare, fold }) => [bare, fold]))].join(" ");

/** Words are letters and digits alone, so nothing in them is read as a sign of the query. */
const matching = ({ bare, fold }: SoughtWord): string =>
  bare === fold ? `"${bare}" *` : `("${bare}" * OR "${fold}" *)`;

/** Where so many plans have all words in one line, those that have them in several are not looked for. */
const ENOUGH = 12;

const together = (asked: readonly SoughtWord[]): string => asked.map(matching).join(" AND ");

function findIn(s: Statements, asked: readonly SoughtWord[], planIds: readonly string[]): FoundInIndex[] {
  const numbers = new Map(s.read.all().map(({ id, no }) => [id, no]));
  const idOf = new Map(planIds.flatMap((id) => (numbers.has(id) ? [[numbers.get(id), id] as const] : [])));
  const among = JSON.stringify([...idOf.keys()]);
  const inOne = s.counts.all(together(asked), among);
  const known = new Set(inOne.map(({ planNo }) => planNo));
  const enough = asked.length === 1 || inOne.length >= ENOUGH;
  const apart = enough ? [] : haveEach(s, asked, among).filter((planNo) => !known.has(planNo));
  return [
    ...inOne.map(({ planNo, count, first }) => ({ planNo, count, place: placeOf(first) })),
    ...apart.map((planNo) => ({ planNo, count: 0, place: null })),
  ].map(({ planNo, ...found }) => ({ planId: idOf.get(planNo) ?? "", ...found }));
}

/** Numbers of the plans that have each of the words somewhere. */
function haveEach(s: Statements, asked: readonly SoughtWord[], among: string): number[] {
  const sets = asked.map((one) => new Set(s.counts.all(matching(one), among).map(({ planNo }) => planNo)));
  const [first = new Set<number>(), ...others] = sets;
  return [...first].filter((planNo) => others.every((plans) => plans.has(planNo)));
}

interface Among {
  readonly planIds: readonly string[];
  readonly most: number;
}

function linesIn(s: Statements, asked: readonly SoughtWord[], { planIds, most }: Among): Map<string, FindableLine[]> {
  const idOf = new Map(planIds.map((id) => [s.planNo.get(id), id]));
  const found = new Map<string, FindableLine[]>(planIds.map((id) => [id, []]));
  for (const row of s.best.all(together(asked), JSON.stringify([...idOf.keys()]), most))
    found.get(idOf.get(Math.floor(row.no / PLAN_STEP)) ?? "")?.push(lineOf(row));
  return found;
}
