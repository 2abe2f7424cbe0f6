/** The items that a ready row makes: one, a left and a right, or several in succession. They have no ids yet. */
import { own } from "#lib/plan/lookup.ts";
import type { Facing, ItemSide, Move, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { escapeScriptText } from "#lib/plan/script-text.ts";
import { cleanWords } from "./clean.ts";
import type { ItemDraft, JudgedRow } from "./judged.ts";
import type { PasteContext, RowSide } from "./types.ts";

const MAX_TITLE = 200;
/** Half of what a line of a plan file may hold, since a brace is doubled there. */
const MAX_LINE = 1000;

export function draftsOf(judged: JudgedRow, context: PasteContext): ItemDraft[] {
  const { reading, kind, seconds } = judged;
  const said = [reading.name, reading.words].filter((part) => part !== "").join(", ");
  if (kind === "heading") return [{ kind: "heading", title: cleanWords(said, MAX_TITLE) }];
  if (kind === "pause" && seconds !== undefined) return [{ kind: "pause", seconds, text: cleanWords(said, MAX_LINE) }];
  const { move, side, springs } = judged;
  if (move === undefined || side === undefined || springs === undefined || seconds === undefined) return [];
  const script = scriptOf(judged);
  const items = SIDES[side].map((one): ItemDraft => {
    const facing = facingOf(judged, one, context);
    return {
      kind: "move",
      move,
      side: one,
      seconds,
      springs: { ...springs },
      ...(facing === undefined ? {} : { facing }),
      ...(reading.offsetMm === undefined ? {} : { offsetMm: reading.offsetMm }),
      ...(script === undefined ? {} : { script }),
    };
  });
  return Array.from({ length: judged.times }, () => items).flat();
}

const SIDES: Readonly<Record<RowSide, readonly ItemSide[]>> = {
  left: ["left"],
  right: ["right"],
  both: ["both"],
  alternating: ["alternating"],
  "left-right": ["left", "right"],
  "right-left": ["right", "left"],
};

function scriptOf({ words, keepWords }: JudgedRow): ScriptLine[] | undefined {
  const line = cleanWords(words, MAX_LINE);
  return keepWords && line !== "" ? [{ kind: "form", text: escapeScriptText(line) }] : undefined;
}

/**
 * The right side of a move that faces a side wall faces the other wall, as when a pair is added by hand. This also
 * holds for a right side in a row of its own, unless that row says where to face.
 */
function facingOf(judged: JudgedRow, side: ItemSide, context: PasteContext): Facing | undefined {
  const { facing } = judged.reading;
  const pair = judged.side === "left-right" || judged.side === "right-left";
  if (side !== "right" || (!pair && facing !== undefined)) return facing;
  const base = facing ?? own(context.moves, judged.move ?? "")?.facing;
  if (base === "left") return "right";
  return base === "right" ? "left" : facing;
}

/** Drafts with ids, ready to insert. */
export function draftsToItems(drafts: readonly ItemDraft[], newId: () => string): PlanItem[] {
  return drafts.map((draft) => ({ ...draft, id: newId() }));
}

/**
 * The plan as it would be with these items after `afterId` (null: at the top). For clocks and checks, never for
 * storing.
 */
export function planWith(
  plan: Plan,
  moves: PasteContext["moves"],
  put: { afterId: string | null; items: readonly PlanItem[] },
): Plan {
  const at = plan.items.findIndex((item) => item.id === put.afterId) + 1;
  const items = [...plan.items.slice(0, at), ...put.items, ...plan.items.slice(at)];
  const used = put.items.flatMap((item) => (item.kind === "move" ? [item.move] : []));
  const added: Record<string, Move> = {};
  for (const id of used) {
    const move = own(moves, id);
    if (move) added[id] = move;
  }
  return { ...plan, items, moves: { ...added, ...plan.moves } };
}
