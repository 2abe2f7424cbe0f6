/** The studio's mail server, as its manager sets it. The password is sealed with the server's secret and never shown again. */
import * as z from "zod";
import { addToRecord } from "#db/repos/record-repo.ts";
import { deleteSetting, readSetting, writeSetting } from "#db/repos/setting-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { fail, NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { seal, unseal } from "#server/signing/seal.ts";

type App = Pick<Springline, "db" | "env">;

const SECURITIES = ["starttls", "tls", "none"] as const;
export type MailSecurity = (typeof SECURITIES)[number];

/** How the server is reached: a kept password belongs to exactly this. */
interface MailServer {
  readonly host: string;
  readonly port: number;
  readonly security: MailSecurity;
  /** Empty where the server asks for none. */
  readonly user: string;
}

interface StoredMail extends MailServer {
  readonly sealedPassword: string | null;
  readonly from: string;
  /** The origin that links in mails lead to. */
  readonly address: string;
}

export interface MailSettings extends MailServer {
  /** Null where there is none, or where it cannot be opened. */
  readonly password: string | null;
  /** The server's secret has changed since the password was typed. */
  readonly passwordLost: boolean;
  readonly from: string;
  readonly address: string;
}

/** For the manager's page: no password, only whether there is one. */
export interface MailSettingsView extends Omit<MailSettings, "password" | "passwordLost"> {
  readonly hasPassword: boolean;
  /** Names this version of the settings, so that another manager's change is not overwritten unseen. */
  readonly seen: number;
}

const PURPOSE = "mail server password";
const HOST = /^(?:[a-z0-9](?:[a-z0-9-]*[a-z0-9])?\.)*[a-z0-9](?:[a-z0-9-]*[a-z0-9])?$|^\[?[0-9a-f:.]+\]?$/i;
const LOCAL = /^(?:localhost|127(?:\.\d{1,3}){3}|::1|\[::1\])$/i;
const NO_ADDRESS = "Give the studio's address as people open it, such as https://plans.example.org.";
/** As an e-mail address may stand in a header and in MAIL FROM: ASCII, one line (RFC 5321, 4.1.2, without quoted names). */
const plainEmail = z
  .string()
  .trim()
  .max(254, "An e-mail address has at most 254 characters.")
  .pipe(z.email("Give the address that mails come from, such as studio@example.org."));

const hostName = z
  .string()
  .trim()
  .min(1, "Give the name of the mail server.")
  .max(253, "A host name has at most 253 characters.")
  // Only after its length is known to be small.
  .pipe(z.string().regex(HOST, "A mail server's name has letters, digits, dots and hyphens only: smtp.example.org."));
const originOnly = z
  .string()
  .trim()
  .max(2000, NO_ADDRESS)
  .refine((text) => /^https?:\/\/[^\s/?#@]+\/?$/i.test(text) && URL.canParse(text), NO_ADDRESS)
  .transform((text) => new URL(text).origin);

export const mailSettingsSchema = z
  .strictObject({
    host: hostName,
    port: z.number("A port is a number.").int().min(1, "A port is at least 1.").max(65535, "A port is at most 65535."),
    security: z.enum(SECURITIES),
    user: z.string().trim().max(254, "A user name has at most 254 characters."),
    /** Left out: as it was. Empty: none. */
    password: z.string().max(1000, "A password has at most 1000 characters.").optional(),
    from: plainEmail,
    address: originOnly,
    /** The version that was shown; 0 where nothing was set. */
    seen: z.number().int(),
  })
  .refine(({ security, host }) => security !== "none" || LOCAL.test(host), {
    path: ["security"],
    message: "Without encryption, only a mail server on this machine (localhost) can be used. Choose STARTTLS or TLS.",
  });

const stored = ({ db }: Pick<Springline, "db">) => {
  const setting = readSetting(db, "mail");
  return setting && { data: setting.data as StoredMail, seen: setting.updatedAt }; // written by saveMailSettings only
};

/** Undefined while e-mail is not set up. */
export function readMailSettings(app: App): MailSettings | undefined {
  const found = stored(app)?.data;
  if (!found) return undefined;
  const { sealedPassword, ...plain } = found;
  const bytes = sealedPassword === null ? null : unseal(app.env.secret, PURPOSE, sealedPassword);
  const password = bytes && Buffer.from(bytes).toString("utf8");
  return { ...plain, password, passwordLost: sealedPassword !== null && password === null };
}

export const isMailSetUp = (app: Pick<Springline, "db">): boolean => stored(app) !== undefined;

/** Null while nothing is set. Errors: 403 no-right. */
export function showMailSettings(app: App, actor: Actor): Result<MailSettingsView | null> {
  if (!can(actor, "mail.manage")) return NO_RIGHT;
  const found = stored(app);
  if (!found) return ok(null);
  const { sealedPassword, ...plain } = found.data;
  return ok({ ...plain, hasPassword: sealedPassword !== null, seen: found.seen });
}

/**
 * A password that is left out is kept for the same server and user only: nobody gets it sent to a server of their own by
 * changing the name. Errors: 403 no-right, 409 changed-meanwhile, 422 password-again.
 */
export function saveMailSettings(
  app: App & Pick<Springline, "now">,
  actor: Actor,
  { seen, password, ...plain }: z.infer<typeof mailSettingsSchema>,
): Result<MailSettingsView> {
  if (actor?.kind !== "person" || !can(actor, "mail.manage")) return NO_RIGHT;
  return inTransaction(app.db, (): Result<MailSettingsView> => {
    const before = stored(app);
    if ((before?.seen ?? 0) !== seen) return CHANGED_MEANWHILE;
    const kept = password === undefined ? (before?.data.sealedPassword ?? null) : null;
    if (kept !== null && before && !sameServer(before.data, plain)) return PASSWORD_AGAIN;
    const sealedPassword = password ? seal(app.env.secret, PURPOSE, Buffer.from(password, "utf8")) : kept;
    // Two changes within a millisecond are still two versions.
    const updatedAt = Math.max(app.now(), seen + 1);
    writeSetting(app.db, "mail", { data: { ...plain, sealedPassword } satisfies StoredMail, updatedAt });
    const body = { ...plain, passwordChanged: password !== undefined };
    addToRecord(app.db, { at: app.now(), actorId: actor.id, subject: "studio", kind: "mail-settings", body });
    return ok({ ...plain, hasPassword: sealedPassword !== null, seen: updatedAt });
  });
}

/** Forgets the mail server and its password: nothing is queued or sent any more. Errors: 403 no-right. */
export function turnMailOff(app: App & Pick<Springline, "now">, actor: Actor): Result<null> {
  if (actor?.kind !== "person" || !can(actor, "mail.manage")) return NO_RIGHT;
  inTransaction(app.db, () => {
    if (!isMailSetUp(app)) return;
    deleteSetting(app.db, "mail");
    const entry = { at: app.now(), actorId: actor.id, subject: "studio", kind: "mail-off" };
    addToRecord(app.db, { ...entry, body: null });
  });
  return ok(null);
}

const sameServer = (a: MailServer, b: MailServer): boolean =>
  a.host === b.host && a.port === b.port && a.security === b.security && a.user === b.user;

const CHANGED_MEANWHILE = fail(
  409,
  "changed-meanwhile",
  "Somebody else has changed the mail settings meanwhile. Reload the page, then make your change again.",
);
const PASSWORD_AGAIN = fail(
  422,
  "password-again",
  "Type the password again: it is kept for one server, port, security and user, and you have changed one of them.",
);
