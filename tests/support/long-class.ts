/** A long class with much to say, of the demo studio's own moves: for measuring. */
import type { Move, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";

const SOURCES: readonly Plan[] = [WHOLE_BODY, UPPER_BODY_AND_TRUNK];

/** A plan of this many items, headings and pauses included, with this many script lines in all. Its length fits none. */
export function longClass(items: number, lines: number): Plan {
  const all = SOURCES.flatMap((plan) => plan.items);
  const list = Array.from({ length: items }, (_, i): PlanItem => {
    const item = all[i % all.length] ?? { kind: "heading", id: "", title: "" };
    return { ...structuredClone(item), id: `n${i}-${item.id}`.slice(0, 60) };
  });
  const moves: Record<string, Move> = Object.assign({}, ...SOURCES.map((plan) => plan.moves));
  return { ...structuredClone(WHOLE_BODY), moves, items: withLines(list, lines) };
}

/** Lines are taken from or given to the move items by turns; what is given repeats the item's own words. */
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
