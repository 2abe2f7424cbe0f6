/** A notice as one sentence, and the place that it opens. Pure. */
import { monthTitle } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { type BundleLine, bundleLines, bundleSentence, classPath } from "./class-bundle.ts";
import { type ClassNames, changedClassSentence } from "./class-words.ts";
import type { NoticeData, NoticeKind } from "./kinds.ts";

/** What the sentence names; looked up when it is read. */
export interface NoticeNames {
  /** Who did it; null for the program itself. */
  readonly by: string | null;
  /** Its reader's. */
  readonly formats: Formats;
  /** The plan's title; null where there is no plan, or one that its reader may not see. */
  readonly title: string | null;
  /** For a changed class: its reader, and the names of people and rooms. */
  readonly classes?: ClassNames | undefined;
  /** To whom a mail could not be sent, and what the mail server said. */
  readonly mail?: { readonly to: string; readonly why: string } | undefined;
}

const TITLE_MAX = 120;
/** Control characters, line ends among them, and marks that change the direction of what follows. */
const UNSEEN = /[\p{Cc}\p{Zl}\p{Zp}\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]+/gu;

/** Text that somebody typed, on one line and at most `most` characters long. */
export function oneLine(text: string, most = TITLE_MAX): string {
  const plain = text.replace(UNSEEN, " ").replace(/\s+/gu, " ").trim();
  const letters = [...plain];
  return letters.length <= most ? plain : `${letters.slice(0, most - 1).join("")}…`;
}

/** The first round needs no number. */
const inRound = ({ round = 1 }: NoticeData): string => (round > 1 ? `, round ${round}` : "");

const SENTENCES: Readonly<
  Record<NoticeKind, (who: string, plan: string, of: NoticeData, names: NoticeNames) => string>
> = {
  offered: (who, plan, of) => `${who} offered ${plan} for reading${inRound(of)}.`,
  "taken-back": (who, plan) => `${who} took ${plan} back while you were reading it.`,
  returned: (who, plan, of) => `${who} returned ${plan} with notes${inRound(of)}.`,
  signed: (who, plan, { edition }) => `${who} signed off ${plan}${edition ? ` as edition ${edition}` : ""}.`,
  withdrawn: (who, plan, { edition }) => `${who} withdrew ${edition ? `edition ${edition} of ` : ""}${plan}.`,
  mention: (who, plan) => `${who} named you in a thread of ${plan}.`,
  comment: (who, plan) => `${who} commented on ${plan}.`,
  proposal: (who, plan) => `${who} proposed a change of ${plan}.`,
  answer: (who, plan, { taken, part }) =>
    taken && part
      ? `${who} took ${part.count} of ${part.of} parts of your proposal for ${plan}: ${part.named.join(", ")}.`
      : `${who} ${taken ? "took" : "declined"} your proposal for ${plan}.`,
  marks: (who, plan, _, { title }) => `${who} set marks for you${title === null ? "" : `, on ${plan}`}.`,
  "class-changed": changedClassWords,
  "class-ahead": changedClassWords,
  "month-signed": (who, _, { month, edition }, { formats }) =>
    `${who} signed off ${month ? monthTitle(month, formats) : "a month"}${edition ? ` as edition ${edition}` : ""}.`,
  "backup-failed": (_, __, { why }) => `No backup could be made. ${oneLine(why ?? "The server's log says why.", 400)}`,
  "mail-failed": (_, __, ___, { mail }) =>
    mail ? `A mail to ${oneLine(mail.to)} could not be sent: ${oneLine(mail.why, 300)}` : "A mail could not be sent.",
};

function changedClassWords(
  who: string,
  _: string,
  { changedClass, changedClasses }: NoticeData,
  { classes }: NoticeNames,
): string {
  if (changedClasses && classes) return bundleSentence(who, changedClasses, classes);
  return changedClass && classes
    ? changedClassSentence(who, changedClass, classes)
    : `${who} changed a class of yours.`;
}

export function noticeSentence(kind: NoticeKind, data: NoticeData, names: NoticeNames): string {
  const plan = names.title === null ? "a plan" : `“${oneLine(planTitle(names.title))}”`;
  return SENTENCES[kind](whoWords(names.by), plan, data, names);
}

/** What a notice that tells of many is about, a sentence each; none for others. */
export function noticeLines({ changedClasses }: NoticeData, { by, classes }: NoticeNames): BundleLine[] {
  return changedClasses && classes ? bundleLines(whoWords(by), changedClasses, classes) : [];
}

const whoWords = (by: string | null): string => (by === null ? "Springline" : oneLine(by));

/** The path of the very place: a plan, a thread or a proposal in it, an edition, a month or a class in it, a person's marks. */
export function noticePath(kind: NoticeKind, planId: string | null, data: NoticeData, readerId: string): string {
  if (kind === "backup-failed") return "/studio#backups";
  if (kind === "mail-failed") return "/studio#mail";
  if (kind === "marks") return `/people/${encodeURIComponent(readerId)}`;
  const changed = data.changedClass ?? data.changedClasses?.[0];
  if (changed) return classPath(changed);
  if (data.month) return `/programme/${encodeURIComponent(data.month)}`;
  if (planId === null) return "/notices";
  const id = encodeURIComponent(planId);
  if ((kind === "signed" || kind === "withdrawn") && data.edition) return `/editions/${id}/${data.edition}`;
  const spot = data.threadId
    ? `#thread-${encodeURIComponent(data.threadId)}`
    : data.proposalId
      ? `#proposal-${encodeURIComponent(data.proposalId)}`
      : "";
  return `/plans/${id}${spot}`;
}

/** "3 new"; "nothing new" for none. */
export const newWords = (unseen: number): string => (unseen === 0 ? "nothing new" : `${unseen} new`);
