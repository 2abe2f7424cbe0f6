/**
 * The springs of a new item until its author changes them: the fewest of this machine's springs whose force in the middle of
 * the travel is what the library asks for, within the least and the most that the move allows.
 */
import { forceN, travelMm } from "#lib/load/load.ts";
import type { Equipment, Move } from "#lib/plan/schema.ts";

type Counts = Readonly<Record<string, number>>;

/** Springs that are chosen at most. */
const MOST = 5;

/** With no load asked for, or none that fits, the fewest springs that the move allows. */
export function startingSprings(move: Move, equipment: Equipment): Record<string, number> {
  const least = { ...move.springs?.min };
  const asked = move.loadN;
  if (move.resistance === "bodyweight" || !asked) return least;
  const [from, to] = travelMm({ equipment }, move);
  const force = (counts: Counts) => forceN(equipment, counts, { xMm: (from + to) / 2, offsetMm: 0 });
  const middle = (asked[0] + asked[1]) / 2;
  const best = choices(move, equipment)
    .map((counts) => ({ counts, n: total(counts), newtons: force(counts) }))
    .filter((c) => c.newtons >= asked[0] && c.newtons <= asked[1])
    .sort((a, b) => a.n - b.n || Math.abs(a.newtons - middle) - Math.abs(b.newtons - middle))[0];
  return best ? Object.fromEntries(Object.entries(best.counts).filter(([, n]) => n > 0)) : least;
}

function choices(move: Move, { springs }: Equipment): Counts[] {
  let all: Counts[] = [{}];
  for (const { id, count } of springs) {
    const low = move.springs?.min?.[id] ?? 0;
    const high = Math.min(count, move.springs?.max?.[id] ?? count);
    const counts = Array.from({ length: Math.max(0, high - low) + 1 }, (_, i) => low + i);
    all = all.flatMap((c) => counts.map((n) => ({ ...c, [id]: n }))).filter((c) => total(c) <= MOST);
  }
  return all;
}

const total = (counts: Counts): number => Object.values(counts).reduce((sum, n) => sum + n, 0);
