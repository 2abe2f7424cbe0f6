/** Adds the demo studio's stock remarks that are missing, as its lead would. */
import { STOCK_REMARKS } from "#seed/studio/remarks.ts";
import type { Springline } from "#server/context/springline.ts";
import { addRemark, listRemarks } from "#server/remarks/remarks.ts";
import { type Cast, must } from "./add-people.ts";

export function addRemarks(app: Springline, { ines }: Cast): void {
  const there = new Set(must(listRemarks(app, ines, true)).remarks.map(({ words }) => words));
  for (const { words, rule: ruleId = null, move: moveId = null } of STOCK_REMARKS)
    if (!there.has(words)) must(addRemark(app, ines, { words, ruleId, moveId }));
}
