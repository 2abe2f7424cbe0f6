/** What a cue line is called wherever it is read outside its script. Pure. */
import { isCueKind, KIND_WORDS } from "#lib/plan/cue-words.ts";
import { plainNumber } from "#lib/plan/format.ts";

/** The name of a line's kind; a kind that this version does not know is shown as it is written. */
export const lineKindWords = (kind: string): string => (isCueKind(kind) ? KIND_WORDS[kind] : kind);

/** Beside a line for which there is no time; `shortBy` in seconds. */
export const setAsideWords = (shortBy: number): string => `set aside: ${plainNumber(shortBy)} s short`;
