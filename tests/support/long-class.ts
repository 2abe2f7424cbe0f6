/** A long class with many lines, from the demo studio's moves, for measuring. */
import type { Move, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";

const SOURCES: readonly Plan[] = [WHOLE_BODY, UPPER_BODY_AND_TRUNK];

/** A plan with this many items, headings and pauses included, and this many script lines. Its length does not fit. */
export function longClass(items: number, lines: number): Plan {
  const all = SOURCES.flatMap((plan) => plan.items);
  const list = Array.from({ length: items }, (_, i): PlanItem => {
    const item = all[i % all.length] ?? { kind: "heading", id: "", title: "" };
    return { ...structuredClone(item), id: `n${i}-${item.id}`.slice(0, 60) };
  });
  const moves: Record<string, Move> = Object.assign({}, ...SOURCES.map((plan) => plan.moves));
  return { ...structuredClone(WHOLE_BODY), moves, items: withLines(list, lines) };
}

/** Lines are removed from or added to the move items in turn; added ones repeat the item's own words. */
function withLines(items: readonly PlanItem[], lines: number): PlanItem[] {
  const moves = items.flatMap((item) => (item.kind === "move" ? [item] : []));
  return items.map((item) => {
    if (item.kind !== "move") return item;
    const turn = moves.indexOf(item);
    const wanted = Math.floor((lines * (turn + 1)) / moves.length) - Math.floor((lines * turn) / moves.length);
    const own = item.script ?? [];
    const script = Array.from({ length: wanted }, (_, i): ScriptLine => {
      return own[i % Math.max(own.length, 1)] ?? { kind: "form", text: "Long spine." };
    });
    return { ...item, script };
  });
}
