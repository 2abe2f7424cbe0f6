/** A plan's page opened with this hash shows its rehearsals at once: the way back from one. */
export const REHEARSALS_HASH = "#rehearsals";
