/** A person's notices: read, counted, marked as seen. Everybody reads only their own. */
import * as z from "zod";
import {
  countUnseenNotices,
  listNoticeRows,
  type NoticeRow,
  type SeenWhere,
  setNoticesSeen,
} from "#db/repos/notice-repo.ts";
import type { Actor, Person } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { noticeReader, type ToldNotice } from "./told-notice.ts";

const PAGE = 50;
/** Rows that are read for one page at most: somebody who lost many plans gets a short page, not a slow one. */
const MOST_ROWS = 10 * PAGE;

export interface NoticePage {
  /** The newest first. */
  readonly notices: readonly ToldNotice[];
  /** The id to go on from with older ones; null at the end. */
  readonly older: number | null;
}

/** One page, from the newest or below the id `before`. Errors: 401, 403 for a device. */
export function listNotices(app: Pick<Springline, "db">, actor: Actor, before?: number): Result<NoticePage> {
  const person = personOf(actor);
  if (!person.ok) return person;
  const reader = noticeReader(app, person.value);
  const notices: ToldNotice[] = [];
  let from = before ?? Number.MAX_SAFE_INTEGER;
  let rows: NoticeRow[] = [];
  for (let read = 0; read < MOST_ROWS; read += PAGE) {
    rows = listNoticeRows(app.db, person.value.id, from, PAGE);
    for (const row of rows) {
      from = row.id;
      const told = reader.read(row);
      if (told) notices.push(told);
      if (notices.length === PAGE) break;
    }
    if (notices.length === PAGE || rows.length < PAGE) break;
  }
  const more = listNoticeRows(app.db, person.value.id, from, 1).length > 0;
  return ok({ notices, older: more ? from : null });
}

/** How many they have not seen and may read. Asked for every page of the workspace. */
export function countUnseen(app: Pick<Springline, "db">, person: Person): number {
  const reader = noticeReader(app, person);
  return countUnseenNotices(app.db, person.id)
    .filter(reader.mayRead)
    .reduce((all, { count }) => all + count, 0);
}

export const seeAllSchema = z.strictObject({ upTo: z.number().int().nonnegative() });

/** Marks every notice up to this id as seen: the newest that was on the page, so that one which came since stays new. */
export function seeAllNotices(
  app: Pick<Springline, "db" | "now">,
  actor: Actor,
  { upTo }: z.infer<typeof seeAllSchema>,
): Result<{ unseen: number }> {
  const person = personOf(actor);
  if (!person.ok) return person;
  setNoticesSeen(app.db, person.value.id, app.now(), { upTo });
  return ok({ unseen: countUnseen(app, person.value) });
}

/**
 * Called by the page of a place when somebody opens it: what they were told of it is seen. Never gets in the way of the
 * page: a disk that is full or damaged leaves the notices as they are.
 */
export function seeNoticesOf(
  app: Pick<Springline, "db" | "now" | "log">,
  person: Person,
  where: Omit<SeenWhere, "upTo">,
): void {
  if (app.db.damage.known !== null) return;
  try {
    setNoticesSeen(app.db, person.id, app.now(), where);
  } catch (err) {
    app.log.warn({ err }, "notices could not be marked as seen");
  }
}

function personOf(actor: Actor): Result<Person> {
  if (actor === null) return NOT_SIGNED_IN;
  return actor.kind === "person" ? ok(actor) : NO_RIGHT;
}
