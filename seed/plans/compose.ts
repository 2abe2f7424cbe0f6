/**
 * Builds demo plans from short rows: adds ids, the moves used, and for every move item a script whose set-up line names each
 * change of springs, station, facing, hands and side before the position of the body.
 */
import { setupChanges } from "#lib/cues/changes.ts";
import {
  type Equipment,
  type Facing,
  type ItemSide,
  type Move,
  type MoveItem,
  PLAN_FORMAT,
  type Plan,
  type PlanItem,
  type ScriptLine,
} from "#lib/plan/schema.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { PHRASES } from "#seed/phrases/phrases.ts";

interface DemoMove {
  readonly move: string;
  readonly side?: ItemSide;
  readonly seconds: number;
  readonly springs: Readonly<Record<string, number>>;
  readonly facing?: Facing;
  /** The start position, mm further from the anchor than usual. */
  readonly offsetMm?: number;
  /** Planned seconds of the change before it. */
  readonly transition?: number;
  /** Kinds of line to add to set-up, start, breath, form, safety and easier. */
  readonly also?: readonly ("focus" | "harder")[];
  /** Kinds of line to leave out. */
  readonly without?: readonly ScriptLine["kind"][];
  /** Lines that replace the usual ones of their kind. */
  readonly lines?: readonly ScriptLine[];
  readonly crew?: string;
}
export type DemoRow = DemoMove | { readonly heading: string } | { readonly pause: number; readonly text: string };
export type PlanHead = Omit<Plan, "format" | "equipment" | "moves" | "items">;

/** A whole plan from rows. Throws when a move is not in the library or has no usual lines. */
export function composePlan(head: PlanHead, equipment: Equipment, rows: readonly DemoRow[]): Plan {
  const moves: Record<string, Move> = {};
  for (const row of rows) if ("move" in row) moves[row.move] = libraryMove(row.move);
  const plan: Plan = { format: PLAN_FORMAT, ...head, equipment, moves, items: [] };
  let before: MoveItem | undefined;
  rows.forEach((row, i) => {
    const item = itemOf(plan, row, i, before);
    plan.items.push(item);
    if (item.kind === "move") before = item;
  });
  return plan;
}

function libraryMove(id: string): Move {
  const move = STARTER_MOVES[id];
  if (!move) throw new Error(`The library has no move "${id}".`);
  return move;
}

function itemOf(plan: Plan, row: DemoRow, index: number, before: MoveItem | undefined): PlanItem {
  if ("heading" in row) return { id: `block-${index + 1}`, kind: "heading", title: row.heading };
  if ("pause" in row) return { id: `pause-${index + 1}`, kind: "pause", seconds: row.pause, text: row.text };
  const side = row.side ?? (libraryMove(row.move).sides === "alternating" ? "alternating" : "both");
  const oneSided = side === "left" || side === "right";
  const bare: MoveItem = {
    id: oneSided ? `${row.move}-${side}` : row.move,
    kind: "move",
    move: row.move,
    side,
    seconds: row.seconds,
    springs: { ...row.springs },
    ...(row.facing ? { facing: row.facing } : {}),
    ...(row.offsetMm === undefined ? {} : { offsetMm: row.offsetMm }),
    ...(row.transition === undefined ? {} : { transitionSeconds: row.transition }),
  };
  return { ...bare, script: scriptOf(plan, row, bare, before) };
}

function scriptOf(plan: Plan, row: DemoMove, item: MoveItem, before: MoveItem | undefined): ScriptLine[] {
  const say = PHRASES[row.move];
  if (!say) throw new Error(`There are no usual lines for "${row.move}".`);
  const usual: (ScriptLine | undefined)[] = [
    { kind: "setup", text: sentence([...changeWordsOf(plan, before, item), ""]) + say.setup },
    say.safety ? { kind: "safety", text: say.safety } : undefined,
    { kind: "start", text: say.start },
    { kind: "breath", text: say.breath },
    { kind: "form", text: say.form },
    row.also?.includes("focus") && say.focus ? { kind: "focus", text: say.focus } : undefined,
    { kind: "easier", text: say.easier },
    row.also?.includes("harder") && say.harder ? { kind: "harder", text: say.harder } : undefined,
    row.crew ? { kind: "crew", text: row.crew } : undefined,
  ];
  const replaced = new Set(row.lines?.map((line) => line.kind));
  const kept = usual.filter(
    (line): line is ScriptLine => line !== undefined && !row.without?.includes(line.kind) && !replaced.has(line.kind),
  );
  return [...kept, ...(row.lines ?? [])];
}

/** What the usual set-up line of a move already says: the position, and hands or feet on a platform. */
const SAID_BY_POSTURE = /^(kneel|sit|stand|lie |come to a plank|hands and knees|hands on|hands free|feet on the f)/;

/** The changes in spoken words; springs as a live field, which stays right when the springs are changed later. */
function changeWordsOf(plan: Plan, before: MoveItem | undefined, item: MoveItem): string[] {
  const words: string[] = [];
  for (const change of setupChanges(plan, before, item)) {
    const { kind } = change;
    if (kind.startsWith("spring")) words.push("now on {springs}");
    else if (kind === "side") words.push("{side} side");
    else if (!SAID_BY_POSTURE.test(change.words)) words.push(change.words);
  }
  return [...new Set(words)];
}

function sentence(words: readonly string[]): string {
  const said = words.filter((word) => word !== "");
  if (said.length === 0) return "";
  const text = said.join(", ");
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}. `;
}
