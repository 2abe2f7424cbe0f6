/** Titles of the rules that a page fetches after it has started, by id. */
export const LATE_TITLES = {
  "says-otherwise": "The script contradicts the plan",
  "typed-number-that-could-be-live": "A typed number that a live field could fill in",
} as const satisfies Readonly<Record<string, string>>;
