/** How thick a coil is drawn: by how stiff the spring is beside the others on its machine. Pure. */
import type { Spring } from "#lib/plan/schema.ts";

/** Line widths of the softest and of the stiffest spring, in units of the drawing. */
const PAGE_WIDTHS = [1.1, 3.4] as const;

type Stiffness = Pick<Spring, "stiffnessNPerMm">;

/** Line width of a coil: the softest spring of the machine is thin, the stiffest thick. */
export function coilWeight(
  spring: Stiffness,
  all: readonly Stiffness[],
  [thin, thick]: readonly [number, number] = PAGE_WIDTHS,
): number {
  const stiffness = all.map((s) => s.stiffnessNPerMm);
  const low = Math.min(...stiffness);
  const high = Math.max(...stiffness);
  if (!(high > low)) return (thin + thick) / 2;
  return thin + ((thick - thin) * (spring.stiffnessNPerMm - low)) / (high - low);
}
