/** The answer to `month fill`. Costs are as shown: whole ten-thousandths divided by 10,000. */
export interface FillAnswer {
  /** With every slot to fill left empty. */
  readonly before: number;
  readonly after: number;
  /** No choice costs less; of those that cost the same this is the first, where there are at most `EXACT_MOST` choices. */
  readonly proven: boolean;
  /** No choice costs less than this. */
  readonly bound?: number;
  /** By start, then id. */
  readonly slots: readonly FilledSlot[];
  /** Ids of findings, sorted. */
  readonly gone: readonly string[];
  readonly new: readonly string[];
}

export interface FilledSlot {
  readonly slot: string;
  /** Null: left empty. */
  readonly plan: string | null;
  /** The cheapest other choices with the rest held, at most three. */
  readonly others: readonly { readonly plan: string | null; readonly cost: number }[];
}

/** Costs are counted in this part of a point. */
export const COST_UNIT = 10_000;

/** Up to so many choices the cheapest is always found and proven. */
export const EXACT_MOST = 1_000_000;
