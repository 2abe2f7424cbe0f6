/** The languages that dates can be written in. */

/** Those whose dates are made of a day, a month's name and Latin digits, as `tests/unit/formats/dates.test.ts` checks. */
export const DATE_LANGUAGES = [
  ...(["en-GB", "en-US", "en-AU", "en-CA", "en-IE", "en-NZ"] as const),
  ...([
    "cs",
    "da",
    "de",
    "de-AT",
    "de-CH",
    "es",
    "fi",
    "fr",
    "fr-CA",
    "it",
    "ja",
    "nb",
    "nl",
    "pl",
    "pt-BR",
    "pt-PT",
  ] as const),
  ...(["sv", "tr", "uk"] as const),
] as const;
export type DateLanguage = (typeof DATE_LANGUAGES)[number];
