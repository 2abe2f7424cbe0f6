/** What the notices' page says. Pure. */
import type { Told } from "#lib/notices/kinds.ts";
import { listWords } from "#lib/plan/format.ts";

export const TOLD_WORDS: Readonly<Record<Told, string>> = {
  digest: "In the daily digest",
  "at-once": "At once",
  off: "In the app only",
};

export const CHOICES = {
  title: "How you are told",
  intro:
    "Everything is listed here. By e-mail you get only what you choose below: which plan it is about and who did what, never the words of a comment or a note.",
  notYet: "Nothing is sent to you until you save your choices.",
  noKinds: "Nothing that your roles are told of is sent by e-mail.",
  saved: "Your choices are saved.",
  zoneHint: "The digest is sent at this zone’s wall-clock time, in summer and winter.",
} as const;

export const NO_NOTICES = {
  title: "Nothing yet.",
  what: "When a plan of yours is returned or signed off, or somebody writes in a thread of yours, it is listed here.",
} as const;

export const NO_MAIL = "You are told here only: e-mail is not set up in this studio.";

/** With who can set it up, by name. */
export const noMailWords = (managers: readonly { readonly name: string }[]): string =>
  managers.length === 0
    ? NO_MAIL
    : `${NO_MAIL} ${listWords(managers.map(({ name }) => name))} can set it up on the studio’s page.`;

export const allSeenWords = "All notices are marked as seen.";
