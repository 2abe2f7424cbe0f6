/** A room's own seconds as typed: texts until they are saved. Pure. */
import type { Equipment } from "#lib/plan/schema.ts";
import { TIMED_WORDS, type Timed } from "./timing-words.ts";

export type TimingsDraft = Readonly<Record<Timed, string>>;
type Given = NonNullable<Equipment["actionSeconds"]>;

const LONGEST = 120;

export const timingsDraftOf = (given: Given | undefined): TimingsDraft =>
  Object.fromEntries(
    TIMED_WORDS.map(([timed]) => [timed, given?.[timed] === undefined ? "" : String(given[timed])]),
  ) as Record<Timed, string>; // TIMED names every key: see its test

interface TimingsRead {
  /** What can be saved, without what is wrong. */
  readonly given: Given;
  readonly problems: Readonly<Partial<Record<Timed, string>>>;
}

/** How much people differ, as typed: a percentage, empty for the usual. */
export const spreadTextOf = (share: number | undefined): string =>
  share === undefined ? "" : String(Math.round(share * 1000) / 10);

/** `share` null: the usual; undefined: it cannot be saved. */
export function readSpread(draft: string): { readonly share: number | null | undefined; readonly problem?: string } {
  const text = draft.trim().replace(",", ".");
  const percent = Number(text);
  if (text === "") return { share: null };
  if (percent >= 0 && percent <= 100) return { share: Math.round(percent * 10) / 1000 };
  return { share: undefined, problem: "Type a percentage from 0 to 100, or leave it empty." };
}

/** An empty field means the usual seconds. */
export function readTimings(draft: TimingsDraft): TimingsRead {
  const given: Given = {};
  const problems: Partial<Record<Timed, string>> = {};
  for (const [timed] of TIMED_WORDS) {
    const text = draft[timed].trim().replace(",", ".");
    if (text === "") continue;
    const seconds = Number(text);
    if (Number.isFinite(seconds) && seconds >= 0 && seconds <= LONGEST) given[timed] = seconds;
    else problems[timed] = `Type seconds from 0 to ${LONGEST}, or leave it empty.`;
  }
  return { given, problems };
}

/** The draft after the room's seconds were changed elsewhere: what was typed stays, the rest follows. */
function draftAfter(draft: TimingsDraft, was: Given | undefined, is: Given | undefined): TimingsDraft {
  const [before, after] = [timingsDraftOf(was), timingsDraftOf(is)];
  return Object.fromEntries(
    TIMED_WORDS.map(([timed]) => [timed, draft[timed] === before[timed] ? after[timed] : draft[timed]]),
  ) as Record<Timed, string>; // as in draftOf
}

/** What is typed, beside what the room has. */
interface TimingsEdit {
  readonly draft: TimingsDraft;
  /** The room's seconds that `draft` is a change of: what was last saved or heard. */
  readonly base: Given | undefined;
  /** The room's seconds as the page was last given them. */
  readonly heard: Given | undefined;
}

export const editOf = (given: Given | undefined): TimingsEdit => ({
  draft: timingsDraftOf(given),
  base: given,
  heard: given,
});

/** The page was asked for again, which takes a while: what was saved and typed since then stays. */
export const hearing = (edit: TimingsEdit, given: Given | undefined): TimingsEdit => ({
  draft: draftAfter(edit.draft, edit.base, given),
  base: given,
  heard: given,
});

/** `given` is the room's now, whatever the page still shows of it. */
export const keeping = (edit: TimingsEdit, given: Given): TimingsEdit => ({ ...edit, base: given });
