/** The formats of one reader, from what the studio decides and what they chose. For the server: it has every language. */
import { wordsOfLanguage } from "./date-words.ts";
import type { FormatChoices, Formats, OwnFormats } from "./formats.ts";

/** What is chosen, with the studio's where it is not. */
export const chosenOver = (studio: FormatChoices, own: OwnFormats): FormatChoices => ({
  dates: own.dates ?? studio.dates,
  clock: own.clock ?? studio.clock,
  weekStart: own.weekStart ?? studio.weekStart,
  force: own.force ?? studio.force,
  length: own.length ?? studio.length,
});

export const formatsOf = (choices: FormatChoices, zone: string): Formats => ({
  ...choices,
  ...{ zone, words: wordsOfLanguage(choices.dates) },
});
