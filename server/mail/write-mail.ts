/**
 * A mail to one person as text and as simple HTML. Who did what to which plan stands in its body; what was written in comments
 * and notes does not, and no subject line names a person or a plan.
 */

import { dayInZone, timeInZone } from "#lib/calendar/local-day.ts";
import type { NoticeKind } from "#lib/notices/kinds.ts";
import { oneLine } from "#lib/notices/notice-words.ts";
import type { ToldNotice } from "#server/notices/told-notice.ts";
import type { MailSettings } from "./mail-settings.ts";

/** As nodemailer takes it. Addresses are objects, so that nothing in a name is read as another address. */
export interface WrittenMail {
  readonly messageId: string;
  readonly from: { readonly name: string; readonly address: string };
  readonly to: { readonly name: string; readonly address: string };
  readonly subject: string;
  readonly text: string;
  readonly html: string;
  readonly headers: Readonly<Record<string, string | { readonly prepared: true; readonly value: string }>>;
  readonly xMailer: false;
  readonly date: Date;
}

export interface Letter {
  /** Stays the same however often the mail is tried. */
  readonly id: string;
  readonly to: { readonly name: string; readonly address: string };
  readonly studioName: string;
  readonly timeZone: string;
  readonly notices: readonly ToldNotice[];
  readonly now: number;
}

/** How many sentences a mail has at most; the rest is counted. */
const MOST = 50;

const MINE: ReadonlySet<NoticeKind> = new Set(["returned", "signed", "withdrawn", "proposal"]);

/** One of a few fixed lines. */
export function subjectLine(notices: readonly Pick<ToldNotice, "kind">[]): string {
  const [first, ...more] = notices;
  if (more.length > 0) return `Springline: ${notices.length} things wait for you`;
  if (first?.kind === "offered") return "Springline: a plan waits to be read";
  if (first?.kind === "backup-failed") return "Springline: a backup could not be made";
  if (first?.kind === "class-changed" || first?.kind === "class-ahead")
    return "Springline: a class of yours has changed";
  if (first?.kind === "month-signed") return "Springline: a month is signed off";
  return first && MINE.has(first.kind)
    ? "Springline: something new about a plan of yours"
    : "Springline: something new for you";
}

export function writeNotices(settings: MailSettings, letter: Letter): WrittenMail {
  const { notices, to, studioName, timeZone } = letter;
  const lines = notices.slice(0, MOST).map(({ at, sentence, path }) => ({
    when: `${dayInZone(at, timeZone)}, ${timeInZone(at, timeZone)}`,
    sentence,
    link: linkTo(settings, path),
  }));
  const list = linkTo(settings, "/notices");
  const rest = notices.length - lines.length;
  const parts: Body = {
    greeting: `Hello ${oneLine(to.name)},`,
    intro: `New for you at ${oneLine(studioName)}:`,
    lines,
    rest: rest > 0 ? `And ${rest} more.` : null,
    foot: "You choose when Springline writes to you, or that it does not:",
    list,
  };
  return envelopeOf(settings, letter, { subject: subjectLine(notices), parts });
}

/** What a manager gets who asks for a test mail. */
export function writeTestMail(settings: MailSettings, letter: Omit<Letter, "notices">): WrittenMail {
  const parts: Body = {
    greeting: `Hello ${oneLine(letter.to.name)},`,
    intro: `This is the test mail that you asked for. ${oneLine(letter.studioName)} can send e-mail.`,
    lines: [],
    rest: null,
    foot: "Each person chooses here when Springline writes to them:",
    list: linkTo(settings, "/notices"),
  };
  return envelopeOf(settings, { ...letter, notices: [] }, { subject: "Springline: test mail", parts });
}

interface Body {
  readonly greeting: string;
  readonly intro: string;
  readonly lines: readonly { readonly when: string; readonly sentence: string; readonly link: string }[];
  readonly rest: string | null;
  readonly foot: string;
  readonly list: string;
}

function envelopeOf(settings: MailSettings, letter: Letter, body: { subject: string; parts: Body }): WrittenMail {
  const { from } = settings;
  return {
    messageId: `<${letter.id}@${from.slice(from.lastIndexOf("@") + 1)}>`,
    from: { name: oneLine(letter.studioName), address: from },
    to: { name: oneLine(letter.to.name), address: letter.to.address },
    subject: body.subject,
    text: textOf(body.parts),
    html: htmlOf(body.parts),
    headers: {
      // RFC 3834, 5: no out-of-office answer to it.
      "Auto-Submitted": "auto-generated",
      // RFC 2369, 3.2: where it is turned off; that needs signing in, so there is no one-click form of it (RFC 8058).
      "List-Unsubscribe": { prepared: true, value: `<${linkTo(settings, "/notices")}>` },
    },
    xMailer: false,
    date: new Date(letter.now),
  };
}

/** Links lead to the studio's own address, whatever a path holds. */
const linkTo = ({ address }: Pick<MailSettings, "address">, path: string): string =>
  `${address}${path.startsWith("/") ? path : `/${path}`}`;

function textOf({ greeting, intro, lines, rest, foot, list }: Body): string {
  const said = lines.map(({ when, sentence, link }) => `- ${sentence}\n  ${when}\n  ${link}\n`);
  return [`${greeting}\n`, `${intro}\n`, ...said, ...(rest === null ? [] : [`${rest}\n`]), `${foot}\n${list}\n`].join(
    "\n",
  );
}

function htmlOf({ greeting, intro, lines, rest, foot, list }: Body): string {
  const said = lines.map(
    ({ when, sentence, link }) => `<li><a href="${escaped(link)}">${escaped(sentence)}</a><br>${escaped(when)}</li>`,
  );
  return [
    '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Springline</title></head><body>',
    `<p>${escaped(greeting)}</p><p>${escaped(intro)}</p>`,
    said.length > 0 ? `<ul>${said.join("")}</ul>` : "",
    rest === null ? "" : `<p>${escaped(rest)}</p>`,
    `<p>${escaped(foot)}<br><a href="${escaped(list)}">${escaped(list)}</a></p></body></html>`,
  ].join("\n");
}

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign);
