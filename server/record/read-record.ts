/** The record for people who may read it: rows as sentences, the newest first, filtered, page by page. */
import { setImmediate as nextTurn } from "node:timers/promises";
import { newestEdition } from "#db/repos/edition-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { listPlanRows, readPlanRow } from "#db/repos/plan-repo.ts";
import { findRecord, type RecordFilter, recordHead } from "#db/repos/record-repo.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import type { RecordHead, RecordRow } from "#lib/record/chain.ts";
import {
  editionOfRow,
  type RecordGroup,
  type RecordNames,
  recordSentence,
  splitSubject,
  testOfGroup,
} from "#lib/record/kinds.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { recordNames, whoDid } from "./record-names.ts";

export interface RecordQuery {
  readonly planId?: string | undefined;
  readonly personId?: string | undefined;
  readonly group?: RecordGroup | undefined;
  /** ms since the epoch, included. */
  readonly from?: number | undefined;
  /** ms since the epoch, not included. */
  readonly until?: number | undefined;
  /** Only rows before this one. */
  readonly before?: number | undefined;
}

export interface RecordLine {
  readonly seq: number;
  /** ms since the epoch. */
  readonly at: number;
  readonly who: string;
  /** What they did, after their name. */
  readonly says: string;
  /** Where it can be seen; null where there is nothing to see, or not for the reader. */
  readonly href: string | null;
  readonly hash: string;
}

export interface RecordPage {
  readonly lines: readonly RecordLine[];
  readonly head: RecordHead;
  /** `before` of the page with older rows; null when there is none. */
  readonly older: number | null;
}

const PAGE = 50;
/** Rows looked through at once: a rare kind among a million rows must not keep others waiting. */
const WINDOW = 20_000;

/** Errors: 403 no-right. */
export async function readRecord(app: Springline, actor: Actor, query: RecordQuery): Promise<Result<RecordPage>> {
  if (!can(actor, "record.read")) return NO_RIGHT;
  const head = recordHead(app.db);
  const filter = filterOf(query);
  const rows: RecordRow[] = [];
  let before = Math.min(query.before ?? Number.MAX_SAFE_INTEGER, head.seq + 1);
  while (before > 1 && rows.length <= PAGE) {
    const after = Math.max(0, before - 1 - WINDOW);
    rows.push(...findRecord(app.db, filter, { after, before, limit: PAGE + 1 - rows.length }));
    before = after + 1;
    await nextTurn();
  }
  const shown = rows.slice(0, PAGE);
  const names = recordNames(app.db);
  const older = rows.length > PAGE ? (shown.at(-1)?.seq ?? null) : null;
  return ok({ lines: shown.map((row) => lineOf(app, row, names)), head, older });
}

function filterOf({ planId, personId, group, from, until }: RecordQuery): RecordFilter {
  const subject = planId === undefined ? undefined : `plan/${planId}`;
  return { subject, personId, from, until, ...(group === undefined ? {} : testOfGroup(group)) };
}

/** What can be chosen to filter by: every plan and everybody, also who has left. Errors: 403 no-right. */
export function recordChoices(
  app: Springline,
  actor: Actor,
): Result<Readonly<Record<"plans" | "people", readonly { readonly id: string; readonly name: string }[]>>> {
  if (!can(actor, "record.read")) return NO_RIGHT;
  const byName = (a: { name: string }, b: { name: string }) => a.name.localeCompare(b.name, "en-GB");
  const plans = listPlanRows(app.db).map(({ id, title }) => ({ id, name: title }));
  const people = [...namesById(app.db)].map(([id, name]) => ({ id, name }));
  return ok({ plans: plans.sort(byName), people: people.sort(byName) });
}

function lineOf(app: Springline, row: RecordRow, names: RecordNames): RecordLine {
  const { seq, at, actorId, hash } = row;
  return { seq, at, hash, who: whoDid(actorId, names), says: recordSentence(row, names), href: placeOf(app, row) };
}

/** Whoever reads the record may read editions, but not every plan. */
function placeOf({ db }: Springline, row: RecordRow): string | null {
  const { what, id } = splitSubject(row.subject);
  const edition = editionOfRow(row);
  if (what === "move") return `/library/${encodeURIComponent(id)}`;
  if (what === "rule") return `/rules/${encodeURIComponent(id)}`;
  if (what === "room" || what === "device") return "/studio";
  if (what === "person") return "/people";
  if (what !== "plan" || readPlanRow(db, id)?.deletedAt !== null || !newestEdition(db, id)) return null;
  const editions = `/editions/${encodeURIComponent(id)}`;
  return edition === null ? editions : `${editions}/${edition}`;
}
