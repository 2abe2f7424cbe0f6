/**
 * A mail with a link that opens a door: joining the studio, or a new password. It says who it is from, how long the link works,
 * and what to do for somebody who did not expect it.
 */
import { oneLine } from "#lib/notices/notice-words.ts";
import { type Addressed, envelopeOf, linkTo, type WrittenMail } from "./mail-body.ts";
import type { MailSettings } from "./mail-settings.ts";

export interface LinkLetter extends Addressed {
  readonly why: "invitation" | "reset" | "forgotten";
  /** Who made the link; undefined where its reader asked for it. */
  readonly byName?: string;
  /** Of the page that it opens, with the secret in it: `/join/...`. */
  readonly path: string;
}

interface Words {
  readonly subject: string;
  readonly intro: (studio: string, by: string) => string;
  readonly works: string;
  readonly unexpected: string;
}

const WORDS: Readonly<Record<LinkLetter["why"], Words>> = {
  invitation: {
    subject: "Springline: an invitation for you",
    intro: (studio, by) => `${by} invites you to join ${studio}. To join, open this link:`,
    works: "The link works once, within two weeks. Anyone who has it can use it, so do not forward this mail.",
    unexpected: "If you do not know what this is about, ignore it: no account exists until you choose a password.",
  },
  reset: {
    subject: "Springline: a link for a new password",
    intro: (studio, by) => `${by} has sent you a link to choose a new password at ${studio}:`,
    works: "The link works once, within a day. Anyone who has it can use it, so do not forward this mail.",
    unexpected:
      "If you did not ask for it, ignore it and tell a manager of your studio. Your password has not changed.",
  },
  forgotten: {
    subject: "Springline: a link for a new password",
    intro: (studio) =>
      `Somebody asked for a new password for your account at ${studio}. If it was you, open this link:`,
    works: "The link works once, within an hour. Anyone who has it can use it, so do not forward this mail.",
    unexpected: "If it was not you, ignore this mail. Your password has not changed.",
  },
};

export function writeLinkMail(settings: MailSettings, letter: LinkLetter): WrittenMail {
  const { subject, intro, works, unexpected } = WORDS[letter.why];
  const by = letter.byName === undefined ? "" : oneLine(letter.byName);
  const parts = {
    greeting: letter.to.name === "" ? "Hello," : `Hello ${oneLine(letter.to.name)},`,
    intro: intro(oneLine(letter.studioName), by),
    lines: [{ sentence: null, when: works, link: linkTo(settings, letter.path) }],
    rest: null,
    foot: unexpected,
    list: null,
  };
  return envelopeOf(settings, letter, { subject, parts });
}
