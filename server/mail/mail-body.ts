/** What all mails have in common: their envelope, and their body as text and as simple HTML that says the same. */
import { oneLine } from "#lib/notices/notice-words.ts";
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

interface MailLine {
  readonly when: string;
  /** Null for a link that is shown as it is. */
  readonly sentence: string | null;
  readonly link: string;
}

export interface MailBody {
  readonly greeting: string;
  readonly intro: string;
  readonly lines: readonly MailLine[];
  readonly rest: string | null;
  readonly foot: string;
  /** Where its reader chooses what they are told; null in a mail that was asked for. */
  readonly list: string | null;
}

/** From whom, to whom and when. */
export interface Addressed {
  /** Stays the same however often the mail is tried. */
  readonly id: string;
  readonly to: { readonly name: string; readonly address: string };
  readonly studioName: string;
  /** ms since the epoch. */
  readonly now: number;
}

export function envelopeOf(
  settings: MailSettings,
  letter: Addressed,
  body: { readonly subject: string; readonly parts: MailBody },
): WrittenMail {
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
      ...(body.parts.list === null
        ? {}
        : { "List-Unsubscribe": { prepared: true as const, value: `<${body.parts.list}>` } }),
    },
    xMailer: false,
    date: new Date(letter.now),
  };
}

/** Links lead to the studio's own address, whatever a path holds. */
export const linkTo = ({ address }: Pick<MailSettings, "address">, path: string): string =>
  `${address}${path.startsWith("/") ? path : `/${path}`}`;

function textOf({ greeting, intro, lines, rest, foot, list }: MailBody): string {
  const said = lines.map(({ when, sentence, link }) =>
    sentence === null ? `${link}\n\n${when}\n` : `- ${sentence}\n  ${when}\n  ${link}\n`,
  );
  const end = list === null ? `${foot}\n` : `${foot}\n${list}\n`;
  return [`${greeting}\n`, `${intro}\n`, ...said, ...(rest === null ? [] : [`${rest}\n`]), end].join("\n");
}

function htmlOf({ greeting, intro, lines, rest, foot, list }: MailBody): string {
  const said = lines.map(
    ({ when, sentence, link }) =>
      `<li><a href="${escaped(link)}">${escaped(sentence ?? link)}</a><br>${escaped(when)}</li>`,
  );
  return [
    '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Springline</title></head><body>',
    `<p>${escaped(greeting)}</p><p>${escaped(intro)}</p>`,
    said.length > 0 ? `<ul>${said.join("")}</ul>` : "",
    rest === null ? "" : `<p>${escaped(rest)}</p>`,
    `<p>${escaped(foot)}${list === null ? "" : `<br><a href="${escaped(list)}">${escaped(list)}</a>`}</p></body></html>`,
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
