/** What a pasted list is read into: rows and cells, then what each row says, from which characters, with its doubts. */
import type { Equipment, Facing, ItemSide, Move } from "#lib/plan/schema.ts";

/** Offsets in UTF-16 units; `to` is the first one after. */
export interface TextSpan {
  readonly from: number;
  readonly to: number;
}

/** A cell of a row. Offsets are into the pasted text; `skips` are offsets of quote marks that only escape others. */
export interface PastedCell extends TextSpan {
  readonly text: string;
  readonly skips?: readonly number[];
}

/** One row of the list. `line` counts from 1; a quoted cell may hold several lines. */
export interface SplitRow extends TextSpan {
  readonly line: number;
  readonly cells: readonly PastedCell[];
}

export type Form = "lines" | "tabs" | "pipes" | "commas" | "semicolons";

/**
 * What a column of a table holds, by its heading. `perNumber`: the seconds or millimetres that a bare number in it
 * stands for.
 */
export type PastedColumn =
  | { readonly role: "free" | "move" | "springs" | "side" | "notes" | "block" | "clock" | "order" }
  | { readonly role: "time"; readonly perNumber?: number }
  | { readonly role: "offset"; readonly perNumber: number }
  | { readonly role: "spring"; readonly spring: string }
  | { readonly role: "other"; readonly title: string };

/** What some characters of a row were read as. `words`: unknown; `passed-over`: a bullet or a list number. */
export type PieceOf = "move" | "time" | "side" | "springs" | "facing" | "offset" | "words" | "passed-over";
export interface PastedPiece extends TextSpan {
  readonly of: PieceOf;
}

/**
 * A length of time. `bare`: a number without a unit. `column`: one in a column of times. `clock`: from the class clock
 * of this row and the next.
 */
export interface TimeFound {
  readonly seconds: number;
  readonly how: "said" | "bare" | "column" | "clock";
  readonly text: string;
  /** Both ends of a range; `seconds` is its lower end. */
  readonly range?: readonly [number, number];
  /** A dash is right before it, with no word before the dash. */
  readonly dashed?: true;
  /** "2 x 45 s", "45/45": how many times. */
  readonly times?: number;
}

/** The sides a row may name; the last two mean two items, in this order. */
export type RowSide = ItemSide | "left-right" | "right-left";

/** Springs of a row by the room's ids, and words that are not springs of the room. */
export interface SpringsFound {
  readonly counts: Readonly<Record<string, number>>;
  readonly unknown: readonly { readonly word: string; readonly count: number }[];
  /** The row says that no spring is on. */
  readonly none: boolean;
  /** Readings to show, such as an abbreviation. */
  readonly notes: readonly string[];
  /** A number and a letter that could also be a time, such as "1 M": its text and the seconds it would be. */
  readonly orTime?: { readonly text: string; readonly seconds: number };
}

interface NearMove {
  readonly move: string;
  readonly score: number;
  /** It has all the words of the row's name, whole or in part. */
  readonly complete?: true;
}

/**
 * How a name was found in the library. Certain: the `same` words, the same in another `order`, another `spelling`, or
 * the only move with these words (`part`). Otherwise similar moves are offered, best first (`near`), or there are none.
 */
export interface Match {
  readonly how: "same" | "order" | "spelling" | "part" | "near" | "none";
  /** The move, when certain. */
  readonly move?: string;
  readonly near: readonly NearMove[];
}

/** What the appearance of a row suggests. */
export type Sign = "heading" | "capitals" | "pause" | "total" | "repeat" | "edge" | "formula" | "too-long";

export interface RowReading extends TextSpan {
  /** Stays the same while the text around the row changes. */
  readonly key: string;
  readonly line: number;
  /** The row as one line to show. */
  readonly typed: string;
  readonly signs: readonly Sign[];
  readonly name: string;
  readonly match: Match;
  readonly times: readonly TimeFound[];
  readonly reps?: number;
  readonly sides: readonly RowSide[];
  readonly springs: SpringsFound;
  readonly facing?: Facing;
  readonly offsetMm?: number;
  /** Words left over, to keep as a form line or to drop. */
  readonly words: string;
  /** The words are from a column of notes. */
  readonly wordsAreNotes: boolean;
  readonly pieces: readonly PastedPiece[];
}

export type PasteReading =
  | { readonly ok: false; readonly say: string }
  | {
      readonly ok: true;
      readonly form: Form;
      readonly rows: readonly RowReading[];
      /** Sentences about the whole list: columns skipped, rows that did not fit. */
      readonly remarks: readonly string[];
    };

/** The studio a list is read for. The three functions return what adding by hand would choose. */
export interface PasteContext {
  readonly moves: Readonly<Record<string, Move>>;
  readonly equipment: Equipment;
  sidesOf(move: Move): readonly ItemSide[];
  startingSeconds(move: Move): number;
  startingSprings(move: Move): Readonly<Record<string, number>>;
}
