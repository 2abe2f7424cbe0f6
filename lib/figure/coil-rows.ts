/** Which springs are on, one row each, and how stiff each is beside the others of its machine. */
import type { Equipment } from "#lib/plan/schema.ts";

/** One spring that is on, and how thick its coil is: 0 for the softest of the machine, 1 for the stiffest. */
export interface CoilRow {
  readonly id: string;
  readonly weight: number;
}

/** More springs than this are said in words. */
const MOST_ROWS = 6;

/** The springs of a set-up, stiffest first, at most six. Springs that the machine does not have are of middle weight. */
export function coilRows(springs: Readonly<Record<string, number>>, equipment?: Pick<Equipment, "springs">): CoilRow[] {
  const known = equipment?.springs ?? [];
  const stiff = known.map((spring) => spring.stiffnessNPerMm);
  const [low, high] = [Math.min(...stiff), Math.max(...stiff)];
  const weightOf = (id: string): number => {
    const own = known.find((spring) => spring.id === id)?.stiffnessNPerMm;
    return own === undefined || !(high > low) ? 0.5 : (own - low) / (high - low);
  };
  const rows = Object.entries(springs).flatMap(([id, count]) =>
    Array.from({ length: Math.min(MOST_ROWS, Math.max(0, Math.ceil(count))) }, () => ({ id, weight: weightOf(id) })),
  );
  return rows.sort((a, b) => b.weight - a.weight || a.id.localeCompare(b.id)).slice(0, MOST_ROWS);
}
