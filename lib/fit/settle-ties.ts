/**
 * Chooses among equally cheap answers with the same sum: the one whose first item is nearer to its wish, then the second,
 * and so on. If a choice is still left (wishes half-way between two times), the earlier item gets the shorter time.
 *
 * Every such answer is a path through the sums that may be left to give out before each variable: a step to the next sum
 * belongs to an answer when its cost and the least cost after it make up the least cost before it. An item's rule only
 * narrows the times of its own variable, so that no answer has to be written out.
 */
import { type Choice, EQUAL, type Stage } from "./stage.ts";
import type { Variable } from "./values.ts";

/** Seconds of each variable. They are in the order of their first items; the items are settled in plan order. */
export function settleTies(variables: readonly Variable[], stages: readonly Stage[], units: number): number[] {
  const answers = new Answers(stages, units);
  const spots = variables.flatMap((v, at) => v.spots.map((spot, nth) => ({ ...spot, at, nth })));
  for (const { at, nth, wish } of spots.sort((a, b) => a.place - b.place)) {
    if (nth === 0) answers.reach(at);
    answers.prefer(at, (seconds) => Math.abs(seconds - wish));
  }
  return answers.shortestFirst();
}

/** A time of one variable, with where it leads from each sum before it. */
interface Step {
  readonly seconds: number;
  /** Place of the next sum among those after the variable, by the place of the sum before it; NONE where none. */
  readonly to: Int32Array;
}
const NONE = -1;

class Answers {
  /** The times that each variable may still take. */
  private readonly steps: (readonly Step[])[] = [];
  /** Which sums before each variable are reached; the last entry is what is reached after all so far. */
  private readonly reached: Uint8Array[] = [Uint8Array.of(1)];
  /** The sums after all variables so far. */
  private sums: readonly number[];

  constructor(
    private readonly stages: readonly Stage[],
    units: number,
  ) {
    this.sums = [units];
  }

  /** Takes up the next variable with all its times that lead to an answer. */
  reach(at: number): void {
    const places = new Map<number, number>();
    const placeOf = (sum: number): number => {
      const place = places.get(sum) ?? places.size;
      places.set(sum, place);
      return place;
    };
    const reached = this.reached[at];
    const steps = (this.stages[at]?.choices ?? []).map((choice): Step => {
      const leads = (sum: number, i: number): boolean => reached?.[i] === 1 && this.leads(at, sum, choice);
      const to = this.sums.map((sum, i) => (leads(sum, i) ? placeOf(sum - choice.units) : NONE));
      return { seconds: choice.seconds, to: Int32Array.from(to) };
    });
    this.steps[at] = steps.filter(({ to }) => to.some((place) => place !== NONE));
    this.reached[at + 1] = new Uint8Array(places.size).fill(1);
    this.sums = [...places.keys()];
  }

  /** Keeps only the times of a variable that are the least by `measure` and still lead to an answer. */
  prefer(at: number, measure: (seconds: number) => number): void {
    const open = this.steps[at] ?? [];
    const levels = open.map(({ seconds }) => measure(seconds)).sort((a, b) => a - b);
    const apart = levels.filter((level, i) => i === 0 || level > (levels[i - 1] ?? 0) + EQUAL);
    if (apart.length < 2) return;
    for (const level of apart) {
      const near = open.filter(({ seconds }) => Math.abs(measure(seconds) - level) <= EQUAL);
      if (this.narrow(at, near)) return;
    }
  }

  /** The one answer that is left when every variable in turn takes its shortest time. */
  shortestFirst(): number[] {
    const alive = this.alive();
    let place = 0;
    return this.steps.map((steps, at) => {
      const step = steps.find(({ to }) => alive[at + 1]?.[to[place] ?? NONE] === 1);
      place = step?.to[place] ?? NONE;
      return step?.seconds ?? 0;
    });
  }

  /** Whether answers are left when a variable takes only these times; if so, it does. */
  private narrow(at: number, near: readonly Step[]): boolean {
    const later: Uint8Array[] = [];
    let now = this.reached[at] ?? new Uint8Array(0);
    for (let i = at; i < this.steps.length; i++) {
      const next = new Uint8Array(this.reached[i + 1]?.length ?? 0);
      const any = follow(now, i === at ? near : (this.steps[i] ?? []), next);
      if (!any) return false;
      later.push(next);
      now = next;
    }
    this.steps[at] = near;
    later.forEach((reached, i) => {
      this.reached[at + 1 + i] = reached;
    });
    return true;
  }

  private leads(at: number, sum: number, { above, units }: Choice): boolean {
    const before = this.stages[at]?.rest.at(sum) ?? 0;
    const next = this.stages[at + 1];
    const after = next ? next.rest.at(sum - units) : sum === units ? 0 : Number.POSITIVE_INFINITY;
    return above + after <= before + EQUAL;
  }

  /** The sums reached from which an answer can still be completed. */
  private alive(): Uint8Array[] {
    const alive = this.reached.map((sums) => sums.slice());
    for (let at = this.steps.length - 1; at >= 0; at--) {
      const [here, next] = [alive[at], alive[at + 1]];
      here?.forEach((_, i) => {
        if (!this.steps[at]?.some(({ to }) => next?.[to[i] ?? NONE] === 1)) here[i] = 0;
      });
    }
    return alive;
  }
}

/** Marks in `next` where these steps lead from the sums of `now`; whether they lead anywhere. */
function follow(now: Uint8Array, steps: readonly Step[], next: Uint8Array): boolean {
  let any = false;
  for (const { to } of steps)
    for (let i = 0; i < now.length; i++) {
      const place = to[i] ?? NONE;
      if (now[i] === 0 || place === NONE) continue;
      next[place] = 1;
      any = true;
    }
  return any;
}
