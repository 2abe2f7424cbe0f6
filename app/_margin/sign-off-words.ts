/** The sentences of the reading before a sign-off, fetched with its dialog. Pure. */
import type { FromFile } from "#lib/doc/from-file.ts";
import { agree } from "#lib/plan/format.ts";

export const SIGN_OFF = {
  loading: "Loading the plan from the server…",
  unreadable: "The server’s answer could not be read. Reload the page and try again.",
  blocked: "It cannot be signed off yet:",
  allow: "Let a lead sign off a plan that only they wrote",
  allowAbout:
    "It is noted in the record, and switches itself off when somebody joins who writes plans. You find it under Studio, Sign-off.",
  changedMeanwhile: "The plan has changed since you read it:",
  asReadAgain: "The plan had changed, and is now as you read it.",
  readAgain: "Read it again",
  noFindings: "The checks found nothing.",
  leaveOpen: "Nobody has accepted these. They stay with the edition and in the record:",
  askedAgain: "The plan was read again, so this is asked again. Your note is as you wrote it.",
  allTheSame: "Sign it all the same",
  note: "A note to go with the edition (optional)",
} as const;

/** Whose reading, return or sign-off the changes are told from. */
export function changedSinceWords(since: Since | undefined, me: string): string {
  if (!since || since.kind === "reading") return "Changed since you last read it:";
  const did = since.kind === "returned" ? "returned it" : since.kind === "withdrawn" ? "withdrew it" : "signed it";
  return `Changed since ${since.byId === me ? "you" : since.byName} ${did}:`;
}

interface Since {
  readonly kind: string;
  readonly byId: string;
  readonly byName: string;
}

export const leaveOpenWords = (open: number): string =>
  agree(open, "Sign with one finding left open", `Sign with ${open} findings left open`);

/** "2 of 5 changed plates are not marked as read."; null for none. */
export function unreadWords(unread: number, changed: number): string | null {
  if (unread === 0) return null;
  if (changed === 1) return "The one changed plate is not marked as read.";
  return `${unread} of ${changed} changed plates ${unread === 1 ? "is" : "are"} not marked as read.`;
}

export const signedWords = (edition: number): string => `Signed off as edition ${edition}.`;

/** The first twelve signs of the hash of exactly what is read. */
export const hashWords = (hash: string): string => `this exact plan: ${hash.slice(0, 12)}`;

export const FROM_FILE = {
  title: "Different from your studio",
  about: "This plan came from a file and keeps what the file says. The findings below are based on it:",
  stranger: ": this move is not in your library, so there is nothing to compare it with.",
} as const;

export const fromFileName = ({ kind, name }: FromFile): string =>
  kind === "machines" ? `The machines: ${name}` : name;
