/** A changed class as one sentence for its coach. Pure. */
import { dayWords, timeWords } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { ClassFacts } from "./class-changes.ts";

export interface ChangedClass {
  /** 'YYYY-MM', and the id of its slot there. */
  readonly month: string;
  readonly slot: string;
  /** Null for a class that is new to its coach. */
  readonly was: ClassFacts | null;
  readonly is: ClassFacts;
}

/** Names as they are when the sentence is read. */
export interface ClassNames {
  readonly readerId: string;
  readonly formats: Formats;
  person(id: string): string;
  room(id: string): string;
}

/** "Ines changed the class on Friday 20 November, at 07:00: now at 08:00, in Loft." */
export function changedClassSentence(who: string, { was, is }: ChangedClass, names: ClassNames): string {
  if (was === null) {
    const whose = is.coach === names.readerId ? "gave you a class" : "added a class";
    return `${who} ${whose} on ${whenWords(is, names.formats)}${is.room === null ? "" : `, in ${names.room(is.room)}`}.`;
  }
  if (is.out) return `${who} called off the class on ${whenWords(was, names.formats)}.`;
  const parts = changedParts(was, is, names);
  const how = parts.length === 0 ? "" : `: now ${parts.join(", ")}`;
  return was.out
    ? `${who} put the class on ${whenWords(was, names.formats)} back${how}.`
    : `${who} changed the class on ${whenWords(was, names.formats)}${how}.`;
}

function changedParts(was: ClassFacts, is: ClassFacts, names: ClassNames): string[] {
  const parts: string[] = [];
  if (is.date !== was.date) parts.push(`on ${whenWords(is, names.formats)}`);
  else if (is.start !== was.start) parts.push(`at ${timeWords(is.start, names.formats)}`);
  if (is.minutes !== was.minutes) parts.push(`${is.minutes} minutes long`);
  if (is.room !== was.room) parts.push(is.room === null ? "without a room" : `in ${names.room(is.room)}`);
  if (is.coach !== was.coach) parts.push(coachPart(is.coach, names));
  return parts;
}

function coachPart(coach: string | null, names: ClassNames): string {
  if (coach === null) return "without a coach";
  return `led by ${coach === names.readerId ? "you" : names.person(coach)}`;
}

/** "Friday 20 November, at 07:00" */
export const whenWords = ({ date, start }: ClassFacts, f: Formats): string =>
  `${dayWords(date, f)}, at ${timeWords(start, f)}`;
