/**
 * The exact choice of lines for one voice. For each set of lines it works out the earliest time by which all of them can be
 * said, from the sets with one line less. Ending earlier is never worse, so one number per set is enough (the dynamic
 * program of Held and Karp 1962 with release times and deadlines).
 */
import { isInTime, type Spoken, spokenAt } from "./said-order.ts";

const NEVER = 0x7fffffff;
/** Earlier lines have higher bits, so that among sets of equal worth the larger number contains the earlier line. */
const bitOf = (n: number, of: number): number => 1 << (of - 1 - n);
const hasLine = (set: number, n: number, of: number): boolean => (set & bitOf(n, of)) !== 0;

/**
 * The choice among some lines that loses least, in an order that is in time: the list's own order if possible, else the one
 * that ends first. `known`: a choice and order that is in time; the better it is, the less has to be tried.
 */
export function bestSaid(lines: readonly Spoken[], some: readonly number[], known: readonly number[]): number[] {
  const core = [...some].sort((a, b) => a - b);
  const { best, last } = bestSet(jobsOf(lines, core), setOf(core, known));
  const listed = core.filter((_, n) => hasLine(best, n, core.length));
  if (isInTime(lines, listed)) return listed;
  const order: number[] = [];
  for (let set = best; set !== 0; ) {
    const n = last[set] ?? 0;
    order.unshift(core[n] ?? 0);
    set &= ~bitOf(n, core.length);
  }
  return order;
}

/**
 * The set that leaves the least worth unsaid, and the last line of each set on the way to it. Sets that must lose more than
 * the best known one are not extended, so few of thousands are left.
 */
function bestSet(jobs: Jobs, known: number): { readonly best: number; readonly last: Uint8Array } {
  const { count, lengths, earliests, latests, befores } = jobs;
  const size = 1 << count;
  const end = new Int32Array(size).fill(NEVER);
  const last = new Uint8Array(size);
  let best = known;
  let least = unsaidWorth(jobs, known);
  end[0] = Math.min(...earliests, 0);
  for (let set = 0; set < size; set++) {
    const free = end[set] as number;
    if (free === NEVER || surelyLost(jobs, set, free) > least) continue;
    const loss = unsaidWorth(jobs, set);
    if (loss <= least) {
      best = set;
      least = loss;
    }
    for (let k = 0, bit = size >> 1; k < count; k++, bit >>= 1) {
      // Skip a line that is in the set already, or that should have come before one in the set.
      if ((set & (bit | (befores[k] as number))) !== 0) continue;
      const over = Math.max(free, earliests[k] as number) + (lengths[k] as number);
      const more = set | bit;
      if (over > (latests[k] as number) || over >= (end[more] as number)) continue;
      end[more] = over;
      last[more] = k;
    }
  }
  return { best, last };
}

type Jobs = ReturnType<typeof jobsOf>;

/** Plain arrays of numbers, since visiting the sets is most of the cost of a cue track. */
function jobsOf(lines: readonly Spoken[], core: readonly number[]) {
  const jobs = core.map((place) => spokenAt(lines, place));
  return {
    count: core.length,
    lengths: Int32Array.from(jobs, (job) => job.length),
    earliests: Int32Array.from(jobs, (job) => job.earliest),
    latests: Int32Array.from(jobs, (job) => job.latest),
    worths: Float64Array.from(jobs, (job) => job.worth),
    befores: Int32Array.from(core, (place) => mustFollow(lines, core, place)),
  };
}

/** The worth of the lines that are not in the set. */
function unsaidWorth({ count, worths }: Jobs, set: number): number {
  let worth = 0;
  for (let k = 0; k < count; k++) if (!hasLine(set, k, count)) worth += worths[k] as number;
  return worth;
}

/**
 * A lower bound on the loss of any choice that extends this set, which is over at `free`: the lines for which it is too
 * late, plus, if the others do not fit before the last deadline, the cheapest worth times the fewest lines that must go.
 */
function surelyLost({ count, lengths, earliests, latests, worths, befores }: Jobs, set: number, free: number): number {
  let lost = 0;
  let needed = 0;
  let longest = 0;
  let cheapest = NEVER;
  let first = NEVER;
  let due = free;
  for (let k = 0, bit = 1 << (count - 1); k < count; k++, bit >>= 1) {
    if ((set & bit) !== 0) continue;
    const length = lengths[k] as number;
    const worth = worths[k] as number;
    const earliest = Math.max(free, earliests[k] as number);
    if ((set & (befores[k] as number)) !== 0 || earliest + length > (latests[k] as number)) {
      lost += worth;
      continue;
    }
    needed += length;
    longest = Math.max(longest, length);
    cheapest = Math.min(cheapest, worth);
    first = Math.min(first, earliest);
    due = Math.max(due, latests[k] as number);
  }
  const over = needed - (due - first);
  return over > 0 && needed > 0 ? lost + Math.ceil(over / longest) * cheapest : lost;
}

/** The lines that must come after this one, as a set. */
const mustFollow = (lines: readonly Spoken[], core: readonly number[], place: number): number =>
  setOf(
    core,
    core.filter((other) => spokenAt(lines, other).after.includes(place)),
  );

const setOf = (core: readonly number[], places: readonly number[]): number =>
  places.reduce((set, place) => set | bitOf(core.indexOf(place), core.length), 0);
