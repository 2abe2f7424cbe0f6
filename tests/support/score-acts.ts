/**
 * Scores what a reader makes of set-up talk against labels. Precision and recall are counted over acts with their object and
 * verdict, and over missing acts. What a label leaves open counts neither way; see the README of the labels.
 */
import type { PlannedAct } from "#lib/acts/planned.ts";
import {
  type ActWords,
  agrees,
  covers,
  type Ends,
  isSoAfter,
  type Label,
  partOf,
  type SetUpCase,
  type Verdict,
} from "./told-acts.ts";

export type GotAct = ActWords & { readonly verdict: Verdict };
export interface Got {
  readonly told: readonly GotAct[];
  readonly missing: readonly ActWords[];
}
export interface Tally<Wanted, Found> {
  readonly hits: number;
  /** Wanted and not found. */
  readonly missed: readonly Wanted[];
  /** Found and not wanted. */
  readonly spurious: readonly Found[];
}

/** Labels that have to be found. An unsure one may be passed over. */
const mustBeFound = ({ optional, any, verdict }: Label): boolean => !optional && !any && verdict !== "unsure";
const verdictsOf = ({ verdict, or = [] }: Label): readonly Verdict[] => [verdict, ...or];

/** A count of one that is left out of what was found agrees: "a handle" names no number. */
const saysTheSame = (label: Label, got: GotAct): boolean =>
  agrees(label, got) || (label.count === 1 && got.count === undefined && agrees({ ...label, count: undefined }, got));

/** A thing that is said to be as it is after the change, and that was so before: the same as saying that it stays. */
const saysWhatIsSo = (got: GotAct, ends: Ends): boolean =>
  got.verdict === "told" &&
  (got.act === "stay" || (isSoAfter(got, ends) && !ends.planned.some((act) => covers(got, act, ends))));

const matches = (label: Label, got: GotAct, ends: Ends): boolean =>
  (saysTheSame(label, got) && verdictsOf(label).includes(got.verdict)) ||
  (label.act === "stay" && label.verdict === "told" && saysWhatIsSo(got, ends));

/** A found act that no label asks for, and that is nevertheless no mistake. */
function isAllowed(got: GotAct, labels: readonly Label[], ends: Ends): boolean {
  if (got.act !== "stay" && saysWhatIsSo(got, ends)) return true;
  return labels.some((label) => {
    if (label.any) return partOf(label) === partOf(got) || got.act === "stay";
    if (label.optional) return saysTheSame(label, got) && !["contradicted", "not-planned"].includes(got.verdict);
    // Said twice in one set-up.
    return matches(label, got, ends);
  });
}

export function scoreTold(labels: readonly Label[], got: readonly GotAct[], ends: Ends): Tally<Label, GotAct> {
  const left = [...got];
  const missed: Label[] = [];
  let hits = 0;
  // Labels that name their object choose first, so that a vaguer one does not take what they need.
  const byDetail = labels.toSorted((a, b) => Object.keys(b).length - Object.keys(a).length);
  for (const label of byDetail.filter(({ optional, any }) => !optional && !any)) {
    const exact = left.findIndex((act) => saysTheSame(label, act) && verdictsOf(label).includes(act.verdict));
    const place = exact >= 0 ? exact : left.findIndex((act) => matches(label, act, ends));
    if (place >= 0) {
      left.splice(place, 1);
      hits++;
    } else if (mustBeFound(label)) missed.push(label);
  }
  return { hits, missed, spurious: left.filter((act) => !isAllowed(act, labels, ends)) };
}

const sameAct = (a: ActWords, b: ActWords): boolean => agrees(a, b) && agrees(b, a);

export function scoreMissing(
  { missing, open }: Pick<SetUpCase, "missing" | "open">,
  got: readonly ActWords[],
): Tally<ActWords, ActWords> {
  const found = missing.filter((act) => got.some((one) => sameAct(act, one)));
  return {
    hits: found.length,
    missed: missing.filter((act) => !found.includes(act)),
    spurious: got.filter((one) => ![...missing, ...open].some((act) => sameAct(act, one))),
  };
}

export class Score {
  private hits = 0;
  private missed = 0;
  private spurious = 0;

  add({ hits, missed, spurious }: Tally<unknown, unknown>): void {
    this.hits += hits;
    this.missed += missed.length;
    this.spurious += spurious.length;
  }

  /** 1 when nothing was found. */
  get precision(): number {
    return this.hits + this.spurious === 0 ? 1 : this.hits / (this.hits + this.spurious);
  }
  /** 1 when nothing was wanted. */
  get recall(): number {
    return this.hits + this.missed === 0 ? 1 : this.hits / (this.hits + this.missed);
  }
  toString(): string {
    const share = (x: number) => x.toFixed(3);
    return `precision ${share(this.precision)}, recall ${share(this.recall)} (${this.hits} right, ${this.spurious} wrongly found, ${this.missed} passed over)`;
  }
}

/** "turn front told". */
export const inWords = ({ act, verdict, ...rest }: ActWords & { readonly verdict?: Verdict }): string => {
  const { spring, count, facing, position, station, side, springs } = rest;
  const on = springs && Object.entries(springs).map(([id, n]) => `${n} ${id}`);
  const words = [act, spring, count, facing, position, station, side, on && `(${on.join(", ")})`, verdict];
  return words.filter((word) => word !== undefined).join(" ");
};

/** Whether what a label says of a planned act is true: for the test of the labels themselves. */
export const isPlanned = (said: ActWords, planned: readonly PlannedAct[], ends: Ends): boolean =>
  planned.some((act) => covers(said, act, ends));
