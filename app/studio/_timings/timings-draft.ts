/** A room's own seconds as they are typed: texts until they are kept. Pure. */
import type { Equipment } from "#lib/plan/schema.ts";
import { TIMED, type Timed } from "./timing-words.ts";

export type TimingsDraft = Readonly<Record<Timed, string>>;
type Given = NonNullable<Equipment["actionSeconds"]>;

const LONGEST = 120;

export const draftOf = (given: Given | undefined): TimingsDraft =>
  Object.fromEntries(
    TIMED.map(([timed]) => [timed, given?.[timed] === undefined ? "" : String(given[timed])]),
  ) as Record<Timed, string>; // TIMED names every key: see its test

export interface TimingsRead {
  /** What can be kept; what is wrong is left out of it. */
  readonly given: Given;
  readonly problems: Readonly<Partial<Record<Timed, string>>>;
}

/** Empty: the program's own seconds. */
export function readTimings(draft: TimingsDraft): TimingsRead {
  const given: Given = {};
  const problems: Partial<Record<Timed, string>> = {};
  for (const [timed] of TIMED) {
    const text = draft[timed].trim().replace(",", ".");
    if (text === "") continue;
    const seconds = Number(text);
    if (Number.isFinite(seconds) && seconds >= 0 && seconds <= LONGEST) given[timed] = seconds;
    else problems[timed] = `Seconds from 0 to ${LONGEST}, or nothing.`;
  }
  return { given, problems };
}

/** The draft after the room's seconds changed under it: what was typed stays, what was not follows. */
export function draftAfter(draft: TimingsDraft, was: Given | undefined, is: Given | undefined): TimingsDraft {
  const [before, after] = [draftOf(was), draftOf(is)];
  return Object.fromEntries(
    TIMED.map(([timed]) => [timed, draft[timed] === before[timed] ? after[timed] : draft[timed]]),
  ) as Record<Timed, string>; // as in draftOf
}
