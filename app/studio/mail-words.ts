/** What the studio's page says of e-mail. Pure. */
import { plural } from "#lib/plan/format.ts";
import type { MailSecurity } from "#server/mail/mail-settings.ts";

export const SECURITY_WORDS: Readonly<Record<MailSecurity, string>> = {
  starttls: "STARTTLS, usually port 587",
  tls: "TLS from the start, usually port 465",
  none: "None, for this machine alone",
};
const OVER: Readonly<Record<MailSecurity, string>> = {
  starttls: " over STARTTLS",
  tls: " over TLS",
  none: ", not encrypted",
};

/** "smtp.example.org, port 587, over STARTTLS". */
export const serverWords = ({ host, port, security }: { host: string; port: number; security: MailSecurity }): string =>
  `${host}, port ${port}${OVER[security]}`;

export const MAIL = {
  intro:
    "People choose for themselves what they are told by e-mail, and when. Subject lines name nobody and no plan; names and titles of plans stand in the mail.",
  notSet: "E-mail is not set up: people are told in the app only.",
  passwordKept: "Leave it empty to keep the password that is saved.",
  passwordHint: "It is encrypted with the server’s secret and never shown again.",
  turnOff: "Turn e-mail off",
  turnOffAsk: "Nobody is told by e-mail any more, and the mail server’s settings and password are forgotten.",
  fromHint:
    "An address that the mail server may send from, and that somebody reads: mails that cannot be delivered later on come back to it.",
  addressHint: "Links in mails lead here.",
} as const;

export const testSentWords = ({ to, said }: { readonly to: string; readonly said: string }): string =>
  `The mail server took the test mail to ${to}. It said: ${said}`;

export const otherAddressWords = (own: string): string =>
  `The server itself is started for ${own}. Links in mails only work if this address leads to it.`;

export const attemptsWords = (attempts: number): string =>
  attempts === 0 ? "not tried yet" : attempts === 1 ? "tried once" : `tried ${plural(attempts, "time")}`;
