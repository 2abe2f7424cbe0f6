/** What belongs together in a class: the items under one heading. */
import type { PlanItem } from "./schema.ts";

/**
 * For each item the number of its block. A heading begins one. Above the first heading nothing says what belongs together,
 * so there only neighbouring items of one move are a block; a pause between them does not matter.
 */
export function blockNumbers(items: readonly PlanItem[]): number[] {
  let block = 0;
  let underHeading = false;
  let before: string | undefined;
  return items.map((item) => {
    if (item.kind === "heading") {
      underHeading = true;
      block += 1;
    } else if (item.kind === "move") {
      if (!underHeading && item.move !== before) block += 1;
      before = item.move;
    }
    return block;
  });
}
