/**
 * Puts what people want to be told by e-mail into the queue: at once, bundled for a minute, and once a day at their own time. A
 * notice and the mail it is put into are one transaction, so that none is lost and none is in two mails.
 */
import { insertMail } from "#db/repos/mail-repo.ts";
import { listNoticeChoices, type NoticeChoiceRow, setDigestSent } from "#db/repos/notice-choice-repo.ts";
import { listUnmailedNotices, type NoticeRow, setNoticesMailed } from "#db/repos/notice-repo.ts";
import { readPerson } from "#db/repos/people-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { lastTimeOfDay } from "#lib/calendar/local-day.ts";
import { type Told, toldAs } from "#lib/notices/kinds.ts";
import type { Person } from "#lib/policy/can.ts";
import type { Springline } from "#server/context/springline.ts";
import { noticeReader } from "#server/notices/told-notice.ts";
import { isMailSetUp } from "./mail-settings.ts";

type App = Pick<Springline, "db" | "now" | "newId">;

const HOUR_MS = 3_600_000;
/** What comes within a minute of the first goes into one mail. */
const BUNDLE_MS = 60_000;
/** What was wanted at once and is older, because e-mail was set up later, waits for the digest. Our own choice. */
const AT_ONCE_MS = 24 * HOUR_MS;
/** Older news is in the app alone. Our own choice. */
const DIGEST_MS = 30 * 24 * HOUR_MS;

/** Does nothing while e-mail is not set up. */
export function fillQueue(app: App): void {
  if (!isMailSetUp(app)) return;
  for (const choice of listNoticeChoices(app.db)) {
    const found = readPerson(app.db, choice.userId);
    if (!found) continue;
    const person: Person = { kind: "person", id: found.id, roles: found.roles };
    inTransaction(app.db, () => {
      queueAtOnce(app, person, choice);
      queueDigest(app, person, choice);
    });
  }
}

function queueAtOnce(app: App, person: Person, choice: NoticeChoiceRow): void {
  const now = app.now();
  // Not what was there before they chose, or what the last digest has dealt with.
  const since = Math.max(now - AT_ONCE_MS, choice.digestSentAt);
  const due = wanted(app, person, { choice, since, as: ["at-once"] });
  const first = due[0];
  if (first && first.at <= now - BUNDLE_MS) queue(app, person, due);
}

function queueDigest(app: App, person: Person, choice: NoticeChoiceRow): void {
  const now = app.now();
  if (choice.digestAt === null || lastTimeOfDay(choice.digestAt, choice.timeZone, now) <= choice.digestSentAt) return;
  setDigestSent(app.db, person.id, now);
  const due = wanted(app, person, { choice, since: now - DIGEST_MS, as: ["digest", "at-once"] });
  if (due.length > 0) queue(app, person, due);
}

interface Wanted {
  readonly choice: NoticeChoiceRow;
  readonly since: number;
  readonly as: readonly Told[];
}

/** New, not seen, in no mail yet, wanted in this way, and theirs to read. */
function wanted(app: App, person: Person, { choice, since, as }: Wanted): NoticeRow[] {
  const reader = noticeReader(app, person);
  return listUnmailedNotices(app.db, person.id, since).filter(
    (row) => as.includes(toldAs(choice.kinds, row.kind)) && reader.mayRead(row),
  );
}

function queue(app: App, person: Person, due: readonly NoticeRow[]): void {
  const now = app.now();
  const notices = due.map(({ id }) => id);
  insertMail(app.db, { id: app.newId(), userId: person.id, notices, madeAt: now, nextAt: now });
  setNoticesMailed(app.db, notices, now);
}
