/** The text of a row, cut where something was read from it, so that a screen can mark what was not read. */
import type { PieceOf, RowReading } from "./types.ts";

export interface TypedPart {
  readonly text: string;
  /** Null for spaces and signs in between. */
  readonly of: PieceOf | null;
  /** Offset within the row. */
  readonly at: number;
}

export function typedParts({ typed, from, pieces }: RowReading): TypedPart[] {
  const parts: TypedPart[] = [];
  let at = 0;
  const push = (to: number, of: PieceOf | null) => {
    const end = Math.min(to, typed.length);
    if (end > at) parts.push({ text: typed.slice(at, end), of, at });
    at = Math.max(at, end);
  };
  for (const piece of pieces) {
    push(piece.from - from, null);
    push(piece.to - from, piece.of);
  }
  push(typed.length, null);
  return parts;
}
