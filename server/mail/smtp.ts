/** Hands one mail to the studio's mail server over SMTP (RFC 5321), encrypted as the settings ask. */
import { createTransport } from "nodemailer";
import type { WrittenMail } from "./mail-body.ts";
import type { MailSettings } from "./mail-settings.ts";

export interface SmtpOptions {
  /** A certificate to trust besides the machine's own, PEM: for tests. */
  readonly ca?: string;
  /** How long to wait for the connection, the greeting and each answer, ms. */
  readonly waitMs?: number;
  /** Gives up: whether the mail arrived is not known then. */
  readonly signal?: AbortSignal;
}

/** RFC 5321, 4.5.3.2, asks for minutes; a studio's own mail server answers in seconds. Our own choice. */
const WAIT_MS = 20_000;

const PASSWORD_LOST =
  "The password of the mail server cannot be read, because the server's secret has changed since it was typed. Type it again.";

/** Resolves with the server's answer once it has taken the mail, "250 ..."; throws nodemailer's error otherwise. */
export async function sendMail(settings: MailSettings, mail: WrittenMail, options: SmtpOptions = {}): Promise<string> {
  const { host, port, security, user, password } = settings;
  if (settings.passwordLost) throw new Error(PASSWORD_LOST);
  const wait = options.waitMs ?? WAIT_MS;
  const transport = createTransport({
    host: host.replace(/^\[|\]$/g, ""),
    port,
    secure: security === "tls",
    // STARTTLS is required, never only tried: a middleman could take the offer out of the answer (RFC 3207, 6).
    requireTLS: security === "starttls",
    ignoreTLS: security === "none",
    ...(user === "" ? {} : { auth: { user, pass: password ?? "" } }),
    tls: { minVersion: "TLSv1.2", ...(options.ca === undefined ? {} : { ca: options.ca }) },
    name: greetingName(settings.address),
    connectionTimeout: wait,
    greetingTimeout: wait,
    socketTimeout: wait,
    dnsTimeout: wait,
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  try {
    const { response } = await transport.sendMail({ ...mail, ...(options.signal ? { signal: options.signal } : {}) });
    return response;
  } finally {
    transport.close();
  }
}

/** For EHLO: the studio's name, or an address literal where it has none (RFC 5321, 4.1.4). */
function greetingName(address: string): string {
  const { hostname } = new URL(address);
  if (/^\d+(\.\d+){3}$/.test(hostname)) return `[${hostname}]`;
  return hostname.includes(".") ? hostname : "[127.0.0.1]";
}
