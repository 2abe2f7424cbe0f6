/**
 * A mail to one person as text and as simple HTML. Who did what to which plan stands in its body; what was written in comments
 * and notes does not, and no subject line names a person or a plan.
 */

import { dayOfMoment, timeOfMoment } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { NoticeKind } from "#lib/notices/kinds.ts";
import { oneLine } from "#lib/notices/notice-words.ts";
import type { ToldNotice } from "#server/notices/told-notice.ts";
import { type Addressed, envelopeOf, linkTo, type MailBody, type WrittenMail } from "./mail-body.ts";
import type { MailSettings } from "./mail-settings.ts";

export interface Letter extends Addressed {
  /** The recipient's. */
  readonly formats: Formats;
  readonly notices: readonly ToldNotice[];
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
  const { notices, to, studioName, formats } = letter;
  const lines = notices.slice(0, MOST).map(({ at, sentence, path }) => ({
    when: `${dayOfMoment(at, formats)}, ${timeOfMoment(at, formats)}`,
    sentence,
    link: linkTo(settings, path),
  }));
  const list = linkTo(settings, "/notices");
  const rest = notices.length - lines.length;
  const parts: MailBody = {
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
  const parts: MailBody = {
    greeting: `Hello ${oneLine(letter.to.name)},`,
    intro: `This is the test mail that you asked for. ${oneLine(letter.studioName)} can send e-mail.`,
    lines: [],
    rest: null,
    foot: "Each person chooses here when Springline writes to them:",
    list: linkTo(settings, "/notices"),
  };
  return envelopeOf(settings, letter, { subject: "Springline: test mail", parts });
}
