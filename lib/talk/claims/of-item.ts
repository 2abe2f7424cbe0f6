/** What the lines of a move item claim, worked out once per item. */
import { perValue } from "#lib/memo/per-value.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { claimsOf } from "./claims.ts";
import type { ItemClaims } from "./types.ts";

export const ITEM_CLAIMS: ItemClaims = {
  anything: perValue(({ script = [] }: MoveItem) => script.some((line) => claimsOf(line).length > 0)),
  times: perValue(({ script = [] }: MoveItem) =>
    script.some((line) => claimsOf(line).some(({ says }) => says === "time" || says === "halfway")),
  ),
};
