/**
 * One voice and several lines, each with a window and a worth: which lines are said, and in which order. All times are whole
 * tenths of a second, so nothing is lost to rounding.
 * Exact for up to `EXACT_LINES` lines (`best-set.ts`). Above that the lines of most worth are placed exactly, and each of
 * the others where it still fits.
 */
import { bestSaid } from "./best-set.ts";
import { isInTime, keepsOrder, lateness, type Spoken, spokenAt } from "./said-order.ts";

export interface VoicePlan {
  /** Indices of the lines that are said, in the order in which they are said. */
  readonly said: readonly number[];
  /** Indices of the others, and by how many tenths each would be late. */
  readonly aside: readonly { readonly line: number; readonly shortBy: number }[];
}

/** A real class has some eight lines to a span. 14 lines are 16,384 sets. */
const EXACT_LINES = 14;

/**
 * Chooses which lines to say so that the least worth is lost, and an order that keeps every window: the list's own order
 * where the windows allow it. Among equal choices the one with the earlier lines wins.
 */
export function oneVoice(lines: readonly Spoken[]): VoicePlan {
  const all = lines.map((_, line) => line);
  if (isInTime(lines, all)) return { said: all, aside: [] };
  const urgent = mostUrgentFirst(lines);
  if (isInTime(lines, urgent)) return { said: urgent, aside: [] };
  return choose(lines, all);
}

function choose(lines: readonly Spoken[], all: readonly number[]): VoicePlan {
  const byWorth = [...all].sort((a, b) => worthOf(lines, b) - worthOf(lines, a) || a - b);
  const core = byWorth.slice(0, EXACT_LINES);
  const exact = bestSaid(lines, core, oneByOne(lines, [], core));
  const said = oneByOne(lines, exact, byWorth.slice(EXACT_LINES));
  const kept = new Set(said);
  const left = all.filter((line) => !kept.has(line));
  return { said, aside: left.map((line) => ({ line, shortBy: shortage(lines, said, line) })) };
}

/** True when some stretch of time must hold more than its length, so no order says everything. False proves nothing. */
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

/** Always takes the line with the earliest deadline among those that may begin. If that is in time, no search is needed. */
function mostUrgentFirst(lines: readonly Spoken[]): number[] {
  const open = new Set(lines.keys());
  const order: number[] = [];
  let now = Number.NEGATIVE_INFINITY;
  while (open.size > 0) {
    let best: number | undefined;
    let [bestBegin, bestDue] = [0, 0];
    for (const place of open) {
      const { earliest, latest, after } = spokenAt(lines, place);
      const begin = Math.max(now, earliest);
      const sooner = best === undefined || begin < bestBegin || (begin === bestBegin && latest < bestDue);
      if (!sooner || after.some((other) => open.has(other))) continue;
      best = place;
      [bestBegin, bestDue] = [begin, latest];
    }
    if (best === undefined) break;
    open.delete(best);
    order.push(best);
    now = bestBegin + spokenAt(lines, best).length;
  }
  return [...order, ...open];
}

/** The order with as many more lines as can be inserted one by one. */
const oneByOne = (lines: readonly Spoken[], said: readonly number[], more: readonly number[]): number[] =>
  more.reduce<number[]>((order, line) => withLine(lines, order, line) ?? order, [...said]);

/** The order with one more line inserted where all are in time; null when there is no such place. */
function withLine(lines: readonly Spoken[], said: readonly number[], line: number): number[] | null {
  const order = [line, ...said];
  for (let n = 0; !isInTime(lines, order); n++) {
    const behind = said[n];
    if (behind === undefined) return null;
    order[n] = behind;
    order[n + 1] = line;
  }
  return order;
}

/** Tenths by which one more line would be late, or make another late, in its best place. */
function shortage(lines: readonly Spoken[], said: readonly number[], line: number): number {
  const late = insertions(said, line)
    .filter((order) => keepsOrder(lines, order))
    .map((order) => lateness(lines, order));
  return Math.max(1, Math.min(...late));
}

function insertions(said: readonly number[], line: number): number[][] {
  return Array.from({ length: said.length + 1 }, (_, n) => [...said.slice(0, n), line, ...said.slice(n)]);
}

const worthOf = (lines: readonly Spoken[], place: number): number => spokenAt(lines, place).worth;
