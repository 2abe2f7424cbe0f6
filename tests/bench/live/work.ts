/** A live work: something that pages do, and what is measured. */
import type { Cost, CostQuestion } from "./child.ts";
import type { Door } from "./raw-page.ts";

export interface Sizes {
  readonly seconds: number;
  readonly plans: number;
  readonly pages: number;
}

export interface Stage extends Sizes {
  readonly door: Door;
  /** The update that every plan begins with. */
  readonly base: Uint8Array;
  /** The update that the month begins with. */
  readonly month: Uint8Array;
  /** What the server has cost so far. */
  cost(question: CostQuestion): Promise<Cost>;
}

/** `ratio`: at most this multiple of the stock server's figure. `most`, `least`: absolute limits. */
export type Target =
  | { readonly kind: "ratio"; readonly value: number }
  | { readonly kind: "most"; readonly value: number }
  | { readonly kind: "least"; readonly value: number };

export interface Measure<K extends string = string> {
  readonly key: K;
  /** With its unit. */
  readonly label: string;
  readonly target?: Target;
}

export type Numbers<K extends string = string> = Readonly<Record<K, number>>;

export interface Work {
  readonly name: string;
  readonly label: string;
  /** What the server needs before it starts. */
  needs(sizes: Sizes): { readonly plans: number; readonly people: number };
  /** In the process of the load. */
  run(stage: Stage): Promise<Numbers>;
  readonly measures: readonly Measure[];
}

/** Makes sure that what is measured and what is shown have the same names. */
export const work = <K extends string>(one: {
  readonly name: string;
  readonly label: string;
  readonly needs: Work["needs"];
  run(stage: Stage): Promise<Numbers<K>>;
  readonly measures: readonly Measure<NoInfer<K>>[];
}): Work => one;

/** Below the gate's limit for one person. */
const PAGES_OF_PERSON = 40;
export const peopleFor = (pages: number): number => Math.ceil(pages / PAGES_OF_PERSON);

/** Share of one processor between two costs. */
export const shareOf = (before: Cost, after: Cost, seconds: number): number =>
  (after.cpu - before.cpu) / (seconds * 1_000_000);
