/** The figures of a class's changes at one width, worked out once for the layout and for the paper. */
import { changeInto } from "#lib/figure/change-of-plan.ts";
import { type ChangeDrawing, drawChange } from "#lib/figure/drawing/draw-change.ts";
import type { Plan } from "#lib/plan/schema.ts";

export interface DrawnChanges {
  /** Pixels: an inch of paper has 96. */
  readonly px: number;
  readonly of: (item: string) => ChangeDrawing | null;
  /** mm; null where there is none. */
  readonly heightOf: (item: string) => number | null;
}

export const pxOf = (mm: number): number => Math.round((mm * 96) / 25.4);

/** Whoever else waits for the server has a turn between two figures: a class of them takes a fifth of a second. */
export const othersFirst = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** Without coils, which stand beside the acts. `mm`: the width of each. */
export async function drawnChanges(plan: Plan, mm: number): Promise<DrawnChanges> {
  const px = pxOf(mm);
  const drawings = new Map<string, ChangeDrawing>();
  for (const { id } of plan.items) {
    const change = changeInto(plan, id);
    if (!change) continue;
    await othersFirst();
    drawings.set(id, drawChange(change, { px, coils: false }));
  }
  const of = (item: string) => drawings.get(item) ?? null;
  const heightOf = (item: string) => {
    const frame = of(item)?.frame;
    return frame ? (mm * frame.height) / frame.width : null;
  };
  return { px, of, heightOf };
}
