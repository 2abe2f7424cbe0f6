/**
 * One voice, several lines, each with a window and a worth: which of them are said, and in which order. Time is whole
 * tenths of a second throughout, so that nothing is lost to rounding.
 *
 * Exact for up to `EXACT_LINES` lines. For every set of lines the earliest moment at which all of them can be over is
 * worked out from the sets with one line less; a set that can be over earlier can do whatever one that is over later can,
 * so one number a set is enough (the dynamic program of Held and Karp 1962 with release times and deadlines). Above that
 * the most valuable lines are placed exactly and each of the others where it still fits.
 */

export interface Spoken {
  /** Length, at least 1. */
  readonly length: number;
  /** The window: begins no earlier, is over no later. */
  readonly earliest: number;
  readonly latest: number;
  /** What is lost when it is not said; above 0. */
  readonly worth: number;
  /** Places (in the list) of lines that must come before this one, when both are said. */
  readonly after: readonly number[];
}

export interface Voice {
  /** Places of the lines that are said, in the order in which they are said. */
  readonly said: readonly number[];
  /** Places of the others, and by how many tenths each would have been late. */
  readonly aside: readonly { readonly line: number; readonly shortBy: number }[];
}

/** A window of the trade holds some eight lines; twice that is 65,536 sets. */
export const EXACT_LINES = 14;

/**
 * Chooses the lines whose loss costs least and an order in which they keep their windows. The order of the list is kept
 * where the windows allow it; of equal choices the one that says the earlier lines wins.
 */
export function oneVoice(lines: readonly Spoken[]): Voice {
  const all = lines.map((_, line) => line);
  if (isInTime(lines, all)) return { said: all, aside: [] };
  const urgent = mostUrgentFirst(lines);
  if (isInTime(lines, urgent)) return { said: urgent, aside: [] };
  return choose(lines, all);
}

function choose(lines: readonly Spoken[], all: readonly number[]): Voice {
  const byWorth = [...all].sort((a, b) => worthOf(lines, b) - worthOf(lines, a) || a - b);
  const core = byWorth.slice(0, EXACT_LINES).sort((a, b) => a - b);
  let said = exactly(lines, core);
  for (const line of byWorth.slice(EXACT_LINES)) said = withLine(lines, said, line) ?? said;
  const kept = new Set(said);
  const left = all.filter((line) => !kept.has(line));
  return { said, aside: left.map((line) => ({ line, shortBy: shortage(lines, said, line) })) };
}

/** True when some stretch of time has more to hold than its length: then no order says everything. False says nothing. */
export function isTooMuch(lines: readonly Spoken[]): boolean {
  const tos = [...new Set(lines.map((line) => line.latest))];
  return [...new Set(lines.map((line) => line.earliest))].some((from) =>
    tos.some((to) => {
      let inside = 0;
      for (const line of lines) if (line.earliest >= from && line.latest <= to) inside += line.length;
      return inside > Math.max(0, to - from);
    }),
  );
}

/** At each moment the line that must be over first, of those that may begin: where that is in time, nothing need be tried. */
function mostUrgentFirst(lines: readonly Spoken[]): number[] {
  const open = new Set(lines.keys());
  const order: number[] = [];
  let now = Number.NEGATIVE_INFINITY;
  while (open.size > 0) {
    let best: number | undefined;
    let [bestBegin, bestDue] = [0, 0];
    for (const place of open) {
      const { earliest, latest, after } = lineAt(lines, place);
      const begin = Math.max(now, earliest);
      const sooner = best === undefined || begin < bestBegin || (begin === bestBegin && latest < bestDue);
      if (!sooner || after.some((other) => open.has(other))) continue;
      best = place;
      [bestBegin, bestDue] = [begin, latest];
    }
    if (best === undefined) break;
    open.delete(best);
    order.push(best);
    now = bestBegin + lineAt(lines, best).length;
  }
  return [...order, ...open];
}

/** Begin of each line of an order when every line is said as early as it may be. */
export function earliestBegins(lines: readonly Spoken[], order: readonly number[]): number[] {
  let free = Number.NEGATIVE_INFINITY;
  return order.map((place) => {
    const line = lineAt(lines, place);
    const begin = Math.max(free, line.earliest);
    free = begin + line.length;
    return begin;
  });
}

/** Begin of each line of an order when every line is said as late as it may be. */
export function latestBegins(lines: readonly Spoken[], order: readonly number[]): number[] {
  let due = Number.POSITIVE_INFINITY;
  const begins = [...order].reverse().map((place) => {
    const line = lineAt(lines, place);
    due = Math.min(due, line.latest) - line.length;
    return due;
  });
  return begins.reverse();
}

/** True when a line that must wait for another stands after it, and all are over in time. */
function isInTime(lines: readonly Spoken[], order: readonly number[]): boolean {
  return keepsOrder(lines, order) && lateness(lines, order) <= 0;
}

function keepsOrder(lines: readonly Spoken[], order: readonly number[]): boolean {
  const rank = new Map(order.map((place, n) => [place, n]));
  return order.every((place, n) => lineAt(lines, place).after.every((other) => (rank.get(other) ?? -1) < n));
}

/** Tenths by which the latest line of an order is late; 0 or less when all are in time. */
function lateness(lines: readonly Spoken[], order: readonly number[]): number {
  const begins = earliestBegins(lines, order);
  return order.reduce((worst, place, n) => {
    const line = lineAt(lines, place);
    return Math.max(worst, (begins[n] ?? 0) + line.length - line.latest);
  }, Number.NEGATIVE_INFINITY);
}

/** The best choice among `core` and an order for it: the list's own where it is in time, else the one that ends first. */
function exactly(lines: readonly Spoken[], core: readonly number[]): number[] {
  const sets = endsOfSets(lines, core);
  let best = 0;
  for (let set = 1; set < sets.end.length; set++) {
    if (sets.end[set] === NEVER) continue;
    const better = (sets.worth[set] ?? 0) - (sets.worth[best] ?? 0);
    if (better > 0 || (better === 0 && set > best)) best = set;
  }
  const listed = core.filter((_, n) => hasLine(best, n, core.length));
  if (isInTime(lines, listed)) return listed;
  const order: number[] = [];
  for (let set = best; set !== 0; ) {
    const n = sets.last[set] ?? 0;
    order.unshift(core[n] ?? 0);
    set &= ~bitOf(n, core.length);
  }
  return order;
}

const NEVER = 0x7fffffff;
/** Earlier lines are higher bits, so that of two sets of one worth the larger number says the earlier line. */
const bitOf = (n: number, of: number): number => 1 << (of - 1 - n);
const hasLine = (set: number, n: number, of: number): boolean => (set & bitOf(n, of)) !== 0;

/** For each set of lines: the earliest end of them all (`NEVER`: not in time), which comes last, what the set is worth. */
function endsOfSets(lines: readonly Spoken[], core: readonly number[]) {
  const n = core.length;
  const size = 1 << n;
  const end = new Int32Array(size).fill(NEVER);
  const last = new Uint8Array(size);
  const worth = new Float64Array(size);
  // Plain arrays of numbers: this loop is most of what a cue track costs.
  const { lengths, earliests, latests, worths, befores } = jobsOf(lines, core);
  end[0] = Math.min(...earliests, 0);
  for (let set = 0; set < size; set++) {
    const free = end[set] as number;
    if (free === NEVER) continue;
    for (let k = 0, bit = size >> 1; k < n; k++, bit >>= 1) {
      // A line may not be said after one that had to wait for it.
      if ((set & (bit | (befores[k] as number))) !== 0) continue;
      const earliest = earliests[k] as number;
      const over = Math.max(free, earliest) + (lengths[k] as number);
      const more = set | bit;
      if (over > (latests[k] as number) || over >= (end[more] as number)) continue;
      end[more] = over;
      last[more] = k;
      worth[more] = (worth[set] as number) + (worths[k] as number);
    }
  }
  return { end, last, worth };
}

function jobsOf(lines: readonly Spoken[], core: readonly number[]) {
  const jobs = core.map((place) => lineAt(lines, place));
  return {
    lengths: Int32Array.from(jobs, (job) => job.length),
    earliests: Int32Array.from(jobs, (job) => job.earliest),
    latests: Int32Array.from(jobs, (job) => job.latest),
    worths: Float64Array.from(jobs, (job) => job.worth),
    befores: Int32Array.from(core, (place) => mustFollow(lines, core, place)),
  };
}

/** The set of lines that have to come after this one. */
function mustFollow(lines: readonly Spoken[], core: readonly number[], place: number): number {
  return core.reduce(
    (set, other, k) => (lineAt(lines, other).after.includes(place) ? set | bitOf(k, core.length) : set),
    0,
  );
}

/** The order with one more line where it is in time; null when there is no such place. */
function withLine(lines: readonly Spoken[], said: readonly number[], line: number): number[] | null {
  return insertions(said, line).find((order) => isInTime(lines, order)) ?? null;
}

/** Tenths by which one more line would be late, or make another late, at the best place for it. */
function shortage(lines: readonly Spoken[], said: readonly number[], line: number): number {
  const late = insertions(said, line)
    .filter((order) => keepsOrder(lines, order))
    .map((order) => lateness(lines, order));
  return Math.max(1, Math.min(...late));
}

function insertions(said: readonly number[], line: number): number[][] {
  return Array.from({ length: said.length + 1 }, (_, n) => [...said.slice(0, n), line, ...said.slice(n)]);
}

function lineAt(lines: readonly Spoken[], place: number): Spoken {
  const line = lines[place];
  if (!line) throw new Error(`No line ${place}.`);
  return line;
}

const worthOf = (lines: readonly Spoken[], place: number): number => lineAt(lines, place).worth;
