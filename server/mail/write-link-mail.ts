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
    intro: (studio, by) => `${by} invites you to write and teach at ${studio}. Open this address to join:`,
    works: "It works once, for two weeks, for whoever has it: pass it on to nobody.",
    unexpected: "If you do not know what this is about, do nothing: no account is made until the address is opened.",
  },
  reset: {
    subject: "Springline: a link for a new password",
    intro: (studio, by) => `${by} made you a link for a new password at ${studio}:`,
    works: "It works once, for a day, for whoever has it: pass it on to nobody.",
    unexpected:
      "If you did not ask for it, do nothing and tell a manager of your studio: your password stays as it is.",
  },
  forgotten: {
    subject: "Springline: a link for a new password",
    intro: (studio) => `Somebody asked for a new password with your address at ${studio}. If it was you, open this:`,
    works: "It works once, for an hour, for whoever has it: pass it on to nobody.",
    unexpected: "If it was not you, do nothing: your password stays as it is.",
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
