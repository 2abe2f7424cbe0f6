/** The two lanes with names: the headings of the class, and the items under them. */
import { clockTime, plural, secondsWords } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { cellOf, type PlacedColumn } from "./columns.ts";
import type { ClassCell, Lane, WorkCell } from "./types.ts";

export function workLane(plan: Plan, placed: readonly PlacedColumn[], nameOf: (item: PlanItem) => string): Lane {
  const items = new Map(plan.items.map((item) => [item.id, item]));
  const cells = placed.map((p): WorkCell => {
    const item = p.column.item === null ? undefined : items.get(p.column.item);
    const moved = item?.kind === "move" ? item : null;
    const move = moved ? moveOf(plan, moved) : undefined;
    const pattern = move?.pattern ?? null;
    return {
      ...cellOf(p, workWords(p, moved, pattern)),
      bare: item ? nameOf(item) : p.column.name,
      number: p.column.number,
      timed: p.column.kind,
      side: moved?.side ?? "both",
      pattern,
      move: move ?? null,
      facing: moved?.facing ?? null,
      known: moved === null || move !== undefined,
      locked: moved?.locked === true,
    };
  });
  return { id: "work", kind: "work", name: "Work", cells };
}

function workWords({ column }: PlacedColumn, item: MoveItem | null, pattern: string | null): string {
  const parts = [`${secondsWords(column.to - column.from)} from ${clockTime(column.from)}`];
  if (pattern !== null) parts.push(pattern);
  if (item?.locked) parts.push("time locked");
  return parts.join(", ");
}

/**
 * Each heading over the columns up to the next heading. A heading without items is named together with the next one; if it
 * is the last, it stands over the closing.
 */
export function headingsLane(plan: Plan, placed: readonly PlacedColumn[], nameOf: (item: PlanItem) => string): Lane {
  const columns = new Map(placed.map((p) => [p.column.key, p]));
  const closing = placed.find((p) => p.column.kind === "closing");
  const cells: ClassCell[] = [];
  let titles: string[] = [];
  let open: { id: string; under: PlacedColumn[] } | null = null;
  const close = () => {
    if (open !== null && open.under.length > 0) cells.push(headingCell(open.id, titles, open.under));
    if (open !== null && open.under.length > 0) titles = [];
  };
  for (const item of plan.items) {
    if (item.kind === "heading") {
      close();
      titles.push(nameOf(item));
      open = { id: item.id, under: [] };
      continue;
    }
    const p = columns.get(item.id);
    if (p && open) open.under.push(p);
  }
  if (open !== null && open.under.length === 0 && closing) open.under.push(closing);
  close();
  return { id: "headings", kind: "headings", name: "Headings", cells };
}

function headingCell(id: string, titles: readonly string[], under: readonly PlacedColumn[]): ClassCell {
  const [first] = under;
  const last = under.at(-1);
  if (first === undefined || last === undefined) throw new RangeError("a heading's cell needs a column");
  const name = titles.join(" · ");
  const { gapFrom: from } = first.column;
  const { to } = last.column;
  const items = plural(under.length, "item");
  const say = `heading, ${items} under it, ${secondsWords(to - from)} from ${clockTime(from)}`;
  return { key: id, item: id, name, first: first.at, last: last.at, from, to, say };
}
