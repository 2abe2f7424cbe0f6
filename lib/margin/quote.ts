/**
 * The words of a quote as they are shown: a live field, which a quote keeps as `{name}`, as the words it stands for.
 */
import { isLiveField } from "#lib/plan/cue-words.ts";
import type { LiveField } from "#lib/plan/schema.ts";

export interface QuotePiece {
  readonly text: string;
  /** The live field that gives the words; undefined for words as they were typed. */
  readonly field?: LiveField;
}

/** `say` gives the words of a field. A name in braces that is not a field is just what somebody typed. */
export function quotePieces(quote: string, say: (field: LiveField) => string): QuotePiece[] {
  return quote.split(/(\{[a-z-]+\})/u).flatMap((text): QuotePiece[] => {
    const field = text.slice(1, -1);
    if (text.startsWith("{") && isLiveField(field)) return [{ text: say(field), field }];
    return text === "" ? [] : [{ text }];
  });
}
