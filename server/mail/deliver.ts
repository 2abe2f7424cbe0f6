/**
 * Sends what is due. An attempt is counted, and the next one set, before the mail server is asked; "sent" is written after it has
 * answered. A process that is killed between the two sends the mail again, under the same Message-ID: SMTP has no way to ask
 * whether a mail has arrived (RFC 5321, 4.5.4.1), and one that is lost would be worse than one that comes twice.
 */

import * as z from "zod";
import { deleteMail, listDueMails, type MailRow, readMail, setMail } from "#db/repos/mail-repo.ts";
import { readNoticeChoice } from "#db/repos/notice-choice-repo.ts";
import { countUnseenNotices, readNoticeRows } from "#db/repos/notice-repo.ts";
import { listMembers, readPerson, type StudioPerson } from "#db/repos/people-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { toldAs } from "#lib/notices/kinds.ts";
import { can } from "#lib/policy/can.ts";
import type { Springline } from "#server/context/springline.ts";
import { personFormats } from "#server/formats/formats.ts";
import { tell } from "#server/notices/tell.ts";
import { noticeReader, type ToldNotice } from "#server/notices/told-notice.ts";
import type { WrittenMail } from "./mail-body.ts";
import { type MailProblem, mailProblem } from "./mail-problem.ts";
import { type MailSettings, readMailSettings } from "./mail-settings.ts";
import { type SmtpOptions, sendMail } from "./smtp.ts";
import { writeNotices } from "./write-mail.ts";

type App = Pick<Springline, "db" | "env" | "now" | "log">;

const MINUTE_MS = 60_000;
/** Pauses after the first, second, ... attempt. After the last one a mail has failed. Together about 45 hours. */
const RETRY_MS: readonly number[] = [1, 5, 30, 120, 360, 720, 1440].map((minutes) => minutes * MINUTE_MS);
/** The longest pause while the mail server takes no mail at all, so that what waits goes soon after it is back. */
const SERVER_AWAY_MS = 10 * MINUTE_MS;
/** How long a mail waits for a mail server that is away, ms. */
const GIVE_UP_MS = RETRY_MS.reduce((sum, pause) => sum + pause, 0);
/** Until a mail that the program could not write is looked at again. */
const FAULT_MS = 60 * MINUTE_MS;
/** A mail that was tried this often, over half an hour, is told of before it has failed. Our own choice. */
const TOLD_AFTER = 4;
const MOST_AT_ONCE = 100;

/** One after the other. Ends early when the mail server takes none at all, or when `signal` says so. */
export async function deliverDue(app: App, options: SmtpOptions = {}): Promise<void> {
  for (const { id } of listDueMails(app.db, app.now(), MOST_AT_ONCE)) {
    const settings = readMailSettings(app);
    if (!settings || options.signal?.aborted) return;
    const problem = await tryOne(app, settings, { id, options });
    if (problem?.kind === "server") return;
  }
}

interface One {
  readonly id: string;
  readonly options: SmtpOptions;
}

/** A fault of the program with one mail is no reason to keep the others back. */
async function tryOne(app: App, settings: MailSettings, one: One): Promise<MailProblem | null> {
  try {
    return await deliverOne(app, settings, one);
  } catch (err) {
    app.log.error({ err, mail: one.id }, "a mail could not be written");
    if (!one.options.signal?.aborted) setMail(app.db, one.id, { nextAt: app.now() + FAULT_MS });
    return null;
  }
}

async function deliverOne(app: App, settings: MailSettings, { id, options }: One): Promise<MailProblem | null> {
  // Read again: the list is as old as the mails before it took.
  const mail = readMail(app.db, id);
  if (!mail || mail.sentAt !== null || mail.failedAt !== null || mail.nextAt > app.now()) return null;
  const written = letterOf(app, settings, mail);
  if (written === null) {
    deleteMail(app.db, id);
    return null;
  }
  if ("says" in written) {
    settle(app, mail, written);
    return written;
  }
  const attempts = mail.attempts + 1;
  const nextAt = app.now() + (RETRY_MS[attempts - 1] ?? RETRY_MS.at(-1) ?? MINUTE_MS);
  setMail(app.db, id, { attempts, nextAt });
  const problem = await attempt(settings, written, options);
  // The program is stopping: the database may be closed already, and the next attempt is set.
  if (options.signal?.aborted) return problem;
  settle(app, { ...mail, attempts, nextAt }, problem);
  return problem;
}

/** Null once the mail server has taken it. */
async function attempt(settings: MailSettings, mail: WrittenMail, options: SmtpOptions): Promise<MailProblem | null> {
  try {
    await sendMail(settings, mail, options);
    return null;
  } catch (error) {
    return mailProblem(error, settings.password);
  }
}

function settle(app: App, mail: MailRow, problem: MailProblem | null): void {
  const at = app.now();
  if (!problem) {
    setMail(app.db, mail.id, { sentAt: at, problem: null });
    return;
  }
  app.log.warn({ mail: mail.id, attempts: mail.attempts, problem: problem.says }, "a mail was not taken");
  const away = problem.kind === "server";
  const failed =
    problem.kind === "message" || (away ? at - mail.madeAt >= GIVE_UP_MS : mail.attempts > RETRY_MS.length);
  const soon = away && mail.nextAt > at + SERVER_AWAY_MS ? { nextAt: at + SERVER_AWAY_MS } : {};
  inTransaction(app.db, () => {
    setMail(app.db, mail.id, { problem: problem.says, ...soon, ...(failed ? { failedAt: at } : {}) });
    if (failed || mail.attempts === TOLD_AFTER) tellFailed(app, mail.id);
  });
}

/** Managers are told once until they have looked: a mail server that is down is one piece of news, not thirty. */
function tellFailed(app: App, mailId: string): void {
  const to = listMembers(app.db)
    .filter(({ id, roles }) => can({ kind: "person", id, roles }, "mail.manage"))
    .filter(({ id }) => !countUnseenNotices(app.db, id).some(({ kind }) => kind === "mail-failed"))
    .map(({ id }) => id);
  tell(app, { kind: "mail-failed", to, planId: null, data: { byId: null, mailId } });
}

/**
 * Written at the last moment, as its reader may have it then. Null when there is nothing left to say: they have seen it
 * meanwhile, may not read it any more, want no mail of it, or have left the studio.
 */
function letterOf(app: App, settings: MailSettings, mail: MailRow): WrittenMail | MailProblem | null {
  const person = readPerson(app.db, mail.userId);
  if (!person) return null;
  const notices = stillNew(app, person, mail);
  if (notices.length === 0) return null;
  const address = emailOf(person);
  if (!address) return { kind: "message", says: "The person has no e-mail address that mail can be sent to." };
  return writeNotices(settings, {
    id: mail.id,
    to: { name: person.name, address },
    studioName: readStudio(app.db)?.name ?? "Springline",
    formats: personFormats(app, person.id),
    notices,
    now: app.now(),
  });
}

function stillNew(app: App, person: StudioPerson, mail: MailRow): ToldNotice[] {
  const kinds = readNoticeChoice(app.db, person.id)?.kinds ?? {};
  const reader = noticeReader(app, { kind: "person", id: person.id, roles: person.roles });
  return readNoticeRows(app.db, mail.notices)
    .filter((row) => row.seenAt === null && toldAs(kinds, row.kind) !== "off")
    .flatMap((row) => reader.read(row) ?? []);
}

/** As it may stand in RCPT TO: one address, on one line (RFC 5321, 4.1.2). */
const emailOf = ({ email }: StudioPerson): string | undefined => z.email().max(254).safeParse(email).data;
