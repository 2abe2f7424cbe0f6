/** The sentences of the reading before a sign-off, fetched with its dialog. Pure. */
import type { FromFile } from "#lib/doc/from-file.ts";

export const SIGN_OFF = {
  loading: "Loading the plan from the server…",
  unreadable: "The server’s answer could not be read. Reload the page and try again.",
  blocked: "It cannot be signed off yet:",
  changedSince: "Changed since you last read it:",
  changedMeanwhile: "The plan has changed since you read it:",
  noFindings: "The checks found nothing.",
  note: "A note to go with the edition (optional)",
} as const;

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
