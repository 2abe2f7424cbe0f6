/** What a person answered about rows in doubt. An answer stays with its row while the text around it changes. */
import type { RowSide } from "./types.ts";

export type RowKind = "move" | "pause" | "heading" | "other-side";

export interface RowAnswer {
  readonly skip?: boolean;
  readonly kind?: RowKind;
  readonly move?: string;
  readonly side?: RowSide;
  readonly seconds?: number;
  /** How many items the row makes, one after the other. */
  readonly times?: number;
  readonly springs?: Readonly<Record<string, number>>;
  /** Whether words left over become a form line. */
  readonly keepWords?: boolean;
}

export interface Answers {
  /** By the row's key. */
  readonly rows: Readonly<Record<string, RowAnswer>>;
  /** Which move a name means, by the folded name: it applies to every row of that name. */
  readonly names: Readonly<Record<string, string>>;
  /** Which spring a word means, by the folded word. */
  readonly springs: Readonly<Record<string, string>>;
}

export const NO_ANSWERS: Answers = { rows: {}, names: {}, springs: {} };

/** One answer: about one row, and about a name or a word wherever it occurs. */
export interface PasteAnswer {
  readonly row?: RowAnswer;
  readonly name?: { readonly name: string; readonly move: string };
  readonly spring?: { readonly word: string; readonly id: string };
}

/** The answers with one more, which adds to earlier answers about the same row. */
export function withAnswer(answers: Answers, key: string, answer: PasteAnswer): Answers {
  const { row, name, spring } = answer;
  return {
    rows: row ? { ...answers.rows, [key]: { ...answers.rows[key], ...row } } : answers.rows,
    names: name ? { ...answers.names, [name.name]: name.move } : answers.names,
    springs: spring ? { ...answers.springs, [spring.word]: spring.id } : answers.springs,
  };
}
