/**
 * One cell while it is being read. Readers take the characters they understand, one after the other; what no reader
 * took is the name of the move, or words left over.
 */
import type { PieceOf, TextSpan } from "./types.ts";

/** Replaces characters that were taken. A noncharacter for internal use; clean text holds none. */
const TAKEN = "\uFDD0";

export interface Taken extends TextSpan {
  readonly of: PieceOf;
}

export class RowField {
  private rest: string;
  readonly taken: Taken[] = [];

  /** `shut`: nothing in it is a name, though it may be left over. */
  constructor(
    readonly text: string,
    readonly shut = false,
  ) {
    this.rest = text;
  }

  /** The text with everything taken blotted out, character by character. */
  get left(): string {
    return this.rest;
  }

  take(from: number, to: number, of: PieceOf): void {
    this.rest = this.rest.slice(0, from) + TAKEN.repeat(to - from) + this.rest.slice(to);
    this.taken.push({ from, to, of });
  }

  /** Takes every match that `accept` allows. */
  takeAll(pattern: RegExp, of: PieceOf, accept: (match: RegExpExecArray) => boolean): void {
    for (const match of [...this.rest.matchAll(pattern)]) {
      if (accept(match)) this.take(match.index, match.index + match[0].length, of);
    }
  }

  /** Stretches of words between signs, taken characters and the ends, with their place. */
  segments(): FieldSegment[] {
    const found: FieldSegment[] = [];
    let from = 0;
    const push = (to: number) => {
      const part = this.rest.slice(from, to);
      const start = part.length - part.trimStart().length;
      const text = part
        .trim()
        .replace(/^[-'’\s]+(?=\s)|(?<=\s)[-\s]+$/g, "")
        .trim();
      const at = from + Math.max(start, part.indexOf(text));
      if (/[\p{L}\p{N}]/u.test(text)) found.push({ text, from: at, to: at + text.length });
    };
    for (const m of this.rest.matchAll(PARTING)) {
      push(m.index);
      from = m.index + m[0].length;
    }
    push(this.rest.length);
    return found;
  }
}

export interface FieldSegment extends TextSpan {
  readonly text: string;
}

/**
 * Signs that separate words: a name does not continue across them unless the library's own does. A slash between two
 * letters, or after a "w", is part of an abbreviation.
 */
const PARTING =
  /[\uFDD0,;:()[\]{}|\\–—•·=+→>"!?“”*_`~#]+|(?<!(?<!\p{L})(?:\p{L}(?=\/\p{L}(?!\p{L}))|w))\/+|(?<=\s)-+(?=\s)|\.(?=\s|$)/giu;

/** Patterns for: no letter or digit just before; none just after. */
export const WORD_START = "(?<![\\p{L}\\p{N}])";
export const WORD_END = "(?![\\p{L}\\p{N}])";
