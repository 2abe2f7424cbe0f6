/** The sentences of the script editor, fetched with it. Pure. */
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import { agree, plural } from "#lib/plan/format.ts";
import type { CueKind } from "#lib/plan/schema.ts";

/** Under the script: its keys, or what a reader can do. */
export const READER_HINT = "You can read this script but not edit it. Select words to comment on them.";
export const WRITER_HINT =
  "Enter: next line. { : a live field. Alt and 1 to 9: the line’s kind. Tab leaves the script.";

export const SELECT_WORDS_FIRST = "Select some words of the script first";
export const TOO_MANY_WORDS = "That is too much text for one comment. Select less, or comment on the item.";
export const WORDS_COMMENT_SENT = "Comment sent, pinned to these words.";

export const fieldListWords = (count: number): string =>
  `${plural(count, "live field")}. Arrow keys choose, Enter inserts, Escape keeps the brace.`;

export const pastedInPartWords = (leftOut: number): string =>
  `Pasted in part: the script is full, and ${plural(leftOut, "character")} did not fit.`;

/** The summary of what the library offers; `care`: a safety prompt is among it. */
export const stockWords = (count: number, care: boolean): string =>
  `${agree(count, "One line", `${count} lines`)} to add from the library${care ? ", safety prompts included" : ""}`;

export const lineAddedWords = (kind: CueKind): string => `${KIND_WORDS[kind]} line added at the end.`;

export const fieldTitle = (name: string): string => `{${name}}: filled in by the plan`;
