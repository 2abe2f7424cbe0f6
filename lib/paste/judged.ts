/** What a row becomes: ready, in doubt with sentences and choices, or skipped. */
import type { MoveItem, Pause } from "#lib/plan/schema.ts";
import type { PasteAnswer, RowKind } from "./answers.ts";
import type { RowReading, RowSide } from "./types.ts";

export interface DoubtChoice {
  readonly label: string;
  readonly answer: PasteAnswer;
}

type DoubtAbout = "kind" | "move" | "side" | "time" | "springs";

export interface PasteDoubt {
  readonly about: DoubtAbout;
  readonly say: string;
  readonly choices: readonly DoubtChoice[];
  /** Rows with the same value here may be answered together. */
  readonly like?: string;
}

/** An item that has no id yet. */
export type ItemDraft = { readonly kind: "heading"; readonly title: string } | Omit<Pause, "id"> | Omit<MoveItem, "id">;

export interface JudgedRow {
  readonly reading: RowReading;
  readonly state: "ready" | "doubt" | "skipped";
  /** Null while the kind is in doubt. */
  readonly kind: RowKind | null;
  readonly move?: string;
  readonly side?: RowSide;
  readonly seconds?: number;
  readonly times: number;
  readonly springs?: Readonly<Record<string, number>>;
  /** Which values the row does not give, and so start with what adding by hand would choose. */
  readonly starting: { readonly seconds: boolean; readonly springs: boolean };
  /** Words left over, and whether they are kept as a form line. */
  readonly words: string;
  readonly keepWords: boolean;
  readonly doubts: readonly PasteDoubt[];
  /** Readings that are certain enough to use but should still be seen. */
  readonly notes: readonly string[];
  /** The items it makes; empty unless it is ready. */
  readonly drafts: readonly ItemDraft[];
}
