/**
 * A plan as lines that can be found: title, theme, what its items are called, what is said, and the authors' notes. A line of
 * a script stands as it is read, with its live fields filled in. Pure.
 */
import type { ClassClock } from "#lib/clock/clock.ts";
import { readerOf } from "#lib/cues/as-read.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";

/** Where in a plan a line stands, the place that says most of it first. */
export const LINE_PLACES = ["title", "theme", "item", "said", "notes"] as const;
export type LinePlace = (typeof LINE_PLACES)[number];

export interface FindableLine {
  readonly place: LinePlace;
  /** Of the item that it belongs to; null for a line of the whole plan. */
  readonly itemId: string | null;
  /** Of `said`: index among the lines of its script. Of `notes`: among the paragraphs. Else 0. */
  readonly line: number;
  readonly text: string;
}

/** What is kept of one plan: beyond it a plan is found by what stands further up. A class has a few hundred lines. */
const MOST_LINES = 4000;
export const MOST_LINE_LETTERS = 2000;
const MOST_LETTERS = 400_000;

/** `clock`: the plan's, if the caller has it. In the order of the class, within the bounds. */
export function findableLines(plan: Plan, clock?: ClassClock): FindableLine[] {
  const kept: FindableLine[] = [];
  let letters = 0;
  for (const { text: whole, ...where } of allLines(plan, clock)) {
    const text = whole.trim().slice(0, MOST_LINE_LETTERS);
    if (text === "") continue;
    letters += text.length;
    if (kept.length >= MOST_LINES || letters > MOST_LETTERS) break;
    kept.push({ ...where, text });
  }
  return kept;
}

function* allLines(plan: Plan, clock?: ClassClock): Generator<FindableLine> {
  const asRead = readerOf(plan, clock);
  yield { place: "title", itemId: null, line: 0, text: plan.title };
  yield { place: "theme", itemId: null, line: 0, text: plan.theme?.name ?? "" };
  for (const item of plan.items) {
    yield { place: "item", itemId: item.id, line: 0, text: ownName(plan, item) };
    if (item.kind !== "move") continue;
    for (const [line, { text }] of (item.script ?? []).entries())
      yield { place: "said", itemId: item.id, line, text: asRead(item, text) };
  }
  for (const [line, text] of (plan.notes ?? "").split("\n").entries())
    yield { place: "notes", itemId: null, line, text };
}

/** What somebody wrote or chose; a stand-in for a missing name is not looked for. */
function ownName(plan: Plan, item: PlanItem): string {
  if (item.kind === "heading") return item.title;
  if (item.kind === "pause") return item.text ?? "";
  return moveOf(plan, item)?.name ?? "";
}
