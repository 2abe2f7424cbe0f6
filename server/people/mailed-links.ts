/**
 * Invitations and reset links that go to their person by e-mail. Whoever makes one sees it as well, and hears at once whether the
 * mail server took it. A link that somebody asks for on the sign-in page is seen by nobody but its mail.
 */
import * as z from "zod";
import type { Db } from "#db/connection.ts";
import { readPerson, readPersonByEmail } from "#db/repos/people-repo.ts";
import type { SignedIn } from "#server/auth/actor.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { CLIENT_NETWORK_HEADER } from "#server/limits/network.ts";
import { PaceLimit } from "#server/limits/pace-limit.ts";
import { isMailSetUp } from "#server/mail/mail-settings.ts";
import { type LinkMailed, sendLink } from "#server/mail/send-link.ts";
import type { SmtpOptions } from "#server/mail/smtp.ts";
import { emailAddress } from "./fields.ts";
import { type InvitationView, invite, inviteSchema } from "./invite.ts";
import { BY_MAIL, makeResetLink, type ResetLink, storeReset } from "./reset-password.ts";

/** `send`: by e-mail as well. */
const send = z.boolean().optional();
export const inviteByMailSchema = inviteSchema.extend({ send });
export const resetByMailSchema = z.strictObject({ send });
export const forgottenSchema = z.strictObject({ email: emailAddress });

interface Mailed {
  /** Undefined where it was not asked for. */
  readonly mailed?: LinkMailed;
}

/** Errors: those of `invite`. A mail that did not go is no error: the link is made, and can be sent by hand. */
export async function inviteByMail(
  app: Springline,
  { actor, name: byName }: Pick<SignedIn, "actor" | "name">,
  { send: byMail, ...asked }: z.infer<typeof inviteByMailSchema>,
  options: SmtpOptions = {},
): Promise<Result<InvitationView & Mailed>> {
  const made = invite(app, actor, asked);
  if (!made.ok || !byMail) return made;
  const to = { name: made.value.name ?? "", address: made.value.email };
  const path = `/join/${made.value.id}`;
  return ok({ ...made.value, mailed: await sendLink(app, { to, byName, path, why: "invitation" }, options) });
}

/** Errors: those of `makeResetLink`. */
export async function resetByMail(
  app: Springline,
  { actor, name: byName }: Pick<SignedIn, "actor" | "name">,
  userId: string,
  { send: byMail }: z.infer<typeof resetByMailSchema>,
  options: SmtpOptions = {},
): Promise<Result<ResetLink & Mailed>> {
  const made = makeResetLink(app, actor, userId);
  const person = readPerson(app.db, userId);
  if (!made.ok || !byMail || !person) return made;
  const to = { name: person.name, address: person.email };
  const { pathname } = new URL(made.value.link);
  return ok({ ...made.value, mailed: await sendLink(app, { to, byName, path: pathname, why: "reset" }, options) });
}

/** How long a link that was asked for on the sign-in page works, ms. */
const FORGOTTEN_MS = 60 * 60_000;
/** One account is not mailed more often than this, whoever asks; nor does one network ask for more. Our own choice. */
const ACCOUNT = { burst: 2, everyMs: 20 * 60_000, keys: 1000 };
const NETWORK = { burst: 10, everyMs: 5 * 60_000, keys: 1000 };
const paces = new WeakMap<Db, { readonly accounts: PaceLimit; readonly networks: PaceLimit }>();

/**
 * Mails a link for a new password to the person of this address. The answer is the same whether there is one, and does not wait
 * for the mail. Errors: 409 no-mail, 429 too-many-asked.
 */
export function forgottenPassword(
  app: Springline,
  { email }: z.infer<typeof forgottenSchema>,
  headers: Headers,
  options: SmtpOptions = {},
): Result<{ readonly asked: true }> {
  if (!isMailSetUp(app)) return NO_MAIL;
  const pace = paces.get(app.db) ?? { accounts: new PaceLimit(ACCOUNT), networks: new PaceLimit(NETWORK) };
  paces.set(app.db, pace);
  const network = headers.get(CLIENT_NETWORK_HEADER);
  if (network && pace.networks.take(network, app.now()) > 0) return TOO_MANY_ASKED;
  // After the answer, which would tell by its time whether there is somebody.
  setImmediate(() => {
    mailForgotten(app, email, pace.accounts, options).catch((err: unknown) =>
      app.log.error({ err }, "a link for a new password could not be made"),
    );
  });
  return ok({ asked: true });
}

/** Rejects where the database cannot be read or written: nobody waits for it any more. */
async function mailForgotten(app: Springline, email: string, accounts: PaceLimit, options: SmtpOptions): Promise<void> {
  const person = readPersonByEmail(app.db, email);
  if (!person || accounts.take(person.id, app.now()) > 0) return;
  const making = { person, by: BY_MAIL, at: app.now(), origin: app.env.origin, lastsMs: FORGOTTEN_MS };
  const { link } = app.db.raw.transaction(() => storeReset(app.db, making)).immediate();
  const to = { name: person.name, address: person.email };
  await sendLink(app, { to, path: new URL(link).pathname, why: "forgotten" }, options);
}

const NO_MAIL = fail(
  409,
  "no-mail",
  "This studio sends no e-mail. Ask a manager for a reset link; the only manager asks whoever runs the server.",
);
const TOO_MANY_ASKED = fail(
  429,
  "too-many-asked",
  "Too many new passwords were asked for from this network. Wait a few minutes, or ask a manager for a reset link.",
);
