/**
 * One cell while it is being read. Readers take the characters that they understand, one after the other; what nobody
 * took is the name of the move, or words left over.
 */
import type { PieceOf, TextSpan } from "./types.ts";

/** Stands where characters were taken. A noncharacter for use inside a program; clean text holds none. */
const TAKEN = "\uFDD0";

export interface Taken extends TextSpan {
  readonly of: PieceOf;
}

export class RowField {
  private rest: string;
  readonly taken: Taken[] = [];

  /** `shut`: nothing in it is a name; it may be left over. */
  constructor(
    readonly text: string,
    readonly shut = false,
  ) {
    this.rest = text;
  }

  /** The text with what was taken blotted out, character for character. */
  get left(): string {
    return this.rest;
  }

  take(from: number, to: number, of: PieceOf): void {
    this.rest = this.rest.slice(0, from) + TAKEN.repeat(to - from) + this.rest.slice(to);
    this.taken.push({ from, to, of });
  }

  /** Takes every match, unless `accept` says no. */
  takeAll(pattern: RegExp, of: PieceOf, accept: (match: RegExpExecArray) => boolean): void {
    for (const match of [...this.rest.matchAll(pattern)]) {
      if (accept(match)) this.take(match.index, match.index + match[0].length, of);
    }
  }

  /** Words between signs, taken stretches and ends, with their place. */
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

/** Signs that part words: a name does not run over them unless the library's own does. */
const PARTING = /[\uFDD0,;:()[\]{}|/\\–—•·=+→>"!?“”*_`~#]+|(?<=\s)-+(?=\s)|\.(?=\s|$)/g;

/** No letter or digit just before; none just after. */
export const WORD_START = "(?<![\\p{L}\\p{N}])";
export const WORD_END = "(?![\\p{L}\\p{N}])";
