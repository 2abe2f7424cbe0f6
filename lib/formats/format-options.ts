/** What a studio or a person can choose of formats, each with an example. For the server, which knows every language. */
import { DATE_LANGUAGES, type DateLanguage } from "./date-languages.ts";
import { languageName, wordsOfLanguage } from "./date-words.ts";
import { dayWords } from "./dates.ts";
import { STANDARD_FORMATS } from "./formats.ts";

export interface LanguageOption {
  readonly value: DateLanguage;
  readonly lang: DateLanguage;
  /** "Deutsch: Dienstag, 3. November" */
  readonly label: string;
}

const EXAMPLE_DAY = "2026-11-03";

let made: readonly LanguageOption[] | undefined;

/** English first, the others by name. */
export function languageOptions(): readonly LanguageOption[] {
  made ??= DATE_LANGUAGES.map((value) => {
    const day = dayWords(EXAMPLE_DAY, { ...STANDARD_FORMATS, dates: value, words: wordsOfLanguage(value) });
    return { value, lang: value, label: `${languageName(value)}: ${day}` };
  });
  return made;
}
