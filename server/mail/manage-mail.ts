/** The manager's acts: a test mail, and what waits or failed, to be tried again. */

import { countMails, listUnsentMails, type MailCounts, readMail, setMail } from "#db/repos/mail-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import type { SignedIn } from "#server/auth/actor.ts";
import { fail, NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { personFormats } from "#server/formats/formats.ts";
import { mailProblem, statusLine } from "./mail-problem.ts";
import { readMailSettings } from "./mail-settings.ts";
import { type SmtpOptions, sendMail } from "./smtp.ts";
import { writeTestMail } from "./write-mail.ts";

export interface UnsentMail {
  readonly id: string;
  readonly to: string;
  /** ms since the epoch, as are all times here. */
  readonly madeAt: number;
  readonly attempts: number;
  /** What the mail server said last; null before the first attempt. */
  readonly problem: string | null;
  /** When it is tried next; null once it has failed. */
  readonly nextAt: number | null;
}

export interface MailState extends MailCounts {
  /** The oldest first. */
  readonly unsent: readonly UnsentMail[];
}

const MOST_LISTED = 100;

/** Errors: 403 no-right. */
export function readMailState(app: Pick<Springline, "db">, actor: Actor): Result<MailState> {
  if (!can(actor, "mail.manage")) return NO_RIGHT;
  const names = namesById(app.db);
  const unsent = listUnsentMails(app.db, MOST_LISTED).map(
    ({ id, userId, madeAt, attempts, problem, nextAt, failedAt }) => ({
      ...{ id, madeAt, attempts, problem },
      to: names.get(userId) ?? FORMER_MEMBER,
      nextAt: failedAt === null ? nextAt : null,
    }),
  );
  return ok({ ...countMails(app.db), unsent });
}

/** Due at once, with all attempts before it again. Errors: 403 no-right, 404, 409 sent-already. */
export function tryMailAgain(app: Pick<Springline, "db" | "now">, actor: Actor, id: string): Result<{ id: string }> {
  if (!can(actor, "mail.manage")) return NO_RIGHT;
  const mail = readMail(app.db, id);
  if (!mail) return NOT_FOUND;
  if (mail.sentAt !== null) return fail(409, "sent-already", "This mail has been sent meanwhile. Reload the page.");
  setMail(app.db, id, { attempts: 0, nextAt: app.now(), failedAt: null });
  return ok({ id });
}

/**
 * Sends a mail to the manager's own address with the settings that are saved. Errors: 403 no-right, 409 not-set-up, 422
 * mail-server with what the mail server said.
 */
export async function sendTestMail(
  app: Pick<Springline, "db" | "env" | "now" | "newId">,
  who: SignedIn,
  options: SmtpOptions = {},
): Promise<Result<{ to: string; said: string }>> {
  if (!can(who.actor, "mail.manage")) return NO_RIGHT;
  const settings = readMailSettings(app);
  if (!settings) return fail(409, "not-set-up", "E-mail is not set up yet. Save the mail server first.");
  const mail = writeTestMail(settings, {
    id: app.newId(),
    to: { name: who.name, address: who.email },
    studioName: readStudio(app.db)?.name ?? "Springline",
    formats: personFormats(app, who.actor.id),
    now: app.now(),
  });
  try {
    const said = await sendMail(settings, mail, options);
    return ok({ to: who.email, said: statusLine(said) ?? "" });
  } catch (error) {
    return fail(422, "mail-server", `The test mail was not sent. ${mailProblem(error, settings.password).says}`);
  }
}
