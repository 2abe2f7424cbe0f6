/** A class as text, one paragraph for each heading, to read while its page loads. */
import { bareName, secondsWords, sideWords } from "./format.ts";
import type { Plan, PlanItem } from "./schema.ts";

export interface OutlinePart {
  /** Undefined for items before the first heading. */
  readonly title?: string;
  /** "Squat 45 s · Row, left 60 s"; empty for a heading with nothing under it. */
  readonly words: string;
}

/** Enough to fill a screen while the page loads. */
const MOST_ITEMS = 60;

/** In plan order. */
export function outlineOf(plan: Plan): OutlinePart[] {
  const parts: { title?: string; items: string[] }[] = [];
  for (const item of plan.items.slice(0, MOST_ITEMS)) {
    if (item.kind === "heading") parts.push({ title: bareName(plan, item), items: [] });
    else {
      if (parts.length === 0) parts.push({ items: [] });
      parts.at(-1)?.items.push(`${sidedName(plan, item)} ${unbroken(secondsWords(item.seconds))}`);
    }
  }
  const left = plan.items.length - MOST_ITEMS;
  if (left > 0) parts.at(-1)?.items.push(`and ${left} more`);
  return parts.map(({ title, items }) => ({ ...(title === undefined ? {} : { title }), words: items.join(" · ") }));
}

/** Keeps a number and its unit on one line. */
const unbroken = (words: string): string => words.replaceAll(" ", "\u00a0");

function sidedName(plan: Plan, item: PlanItem): string {
  const name = bareName(plan, item);
  return item.kind === "move" && item.side !== "both" ? `${name}, ${sideWords(item.side)}` : name;
}
