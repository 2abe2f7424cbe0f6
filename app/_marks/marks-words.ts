/** The sentences of marks. */
import { dateOfMoment } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";

export const MARKS = {
  title: "Marks",
  lead: "Marks help somebody to become a coach. They are read by the person they are about, by leads and by managers; nobody is ranked.",
  set: "Set marks",
  what: "What you mark",
  whom: "Who taught it",
  whomHint: "A class log names nobody. Chosen from the programme where it says so.",
  notLooked: "not looked at",
  sentence: "What to work on next",
  sentenceHint: "One or two sentences. Required.",
  send: "Set these marks",
  sending: "Setting the marks…",
  sofar: "Marks so far",
  none: "No marks have been set on this plan.",
  nothingToMark:
    "There is nothing to mark yet. A plan can be marked once it has been offered for reading or a class was taught from it.",
  replaced: "replaced by later marks",
  rubric: "Change the rubric",
} as const;

export const roundWords = (number: number, name: string, at: number, f: Formats): string =>
  `Round ${number}, offered by ${name} on ${dateOfMoment(at, f)}`;
export const classWords = (edition: number, at: number, f: Formats): string =>
  `Class of ${dateOfMoment(at, f)}, edition ${edition}`;
export const setWords = (name: string): string => `Marks set. ${name} is told.`;
export const levelWords = (level: number, of: number): string => `${level} of ${of}`;
