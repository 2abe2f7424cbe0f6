/** A card as the rows of one page, to hang on the wall. */
import { readerOf } from "#lib/cues/as-read.ts";
import { isSpringChange, type SetupChange, setupChanges } from "#lib/cues/changes.ts";
import { type SpringCount, springCounts } from "#lib/cues/springs.ts";
import { moveName, sideWords } from "#lib/plan/format.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import type { Card } from "./schema.ts";

export type SheetRow =
  | { readonly kind: "heading"; readonly id: string; readonly title: string }
  | {
      readonly kind: "pause";
      readonly id: string;
      readonly title: string;
      readonly start: number;
      readonly seconds: number;
    }
  | {
      readonly kind: "move";
      readonly id: string;
      /** 1, 2, ... among the moves. */
      readonly number: number;
      readonly title: string;
      /** Null for both sides at once. */
      readonly side: string | null;
      readonly start: number;
      readonly seconds: number;
      /** Seconds of the change before it. */
      readonly change: number;
      readonly springs: readonly SpringCount[];
      /** True when the springs change. */
      readonly newSprings: boolean;
      /** The line that starts the work, live fields filled in; null where there is none. */
      readonly starts: string | null;
      /** What people do to get there, springs included, in a safe order. The side is the plate's to say. */
      readonly changes: readonly SetupChange[];
    };

/** The rows of a card, in plan order. */
export function sheetRows(card: Card): SheetRow[] {
  const { plan, clock } = card;
  const read = readerOf(plan, clock);
  let number = 0;
  return plan.items.map((item, index): SheetRow => {
    const row = clock.rows.find((r) => r.item === item.id);
    if (item.kind === "heading") return { kind: "heading", id: item.id, title: item.title };
    const start = row?.start ?? 0;
    const { id, seconds } = item;
    if (item.kind === "pause") return { kind: "pause", id, title: item.text || "Pause", start, seconds };
    number += 1;
    const changes = setupChanges(plan, plan.items.slice(0, index).findLast(isMoveItem), item);
    return {
      kind: "move",
      id,
      number,
      title: moveName(plan, item),
      side: item.side === "both" ? null : sideWords(item.side),
      start,
      seconds,
      change: start - (row?.transitionFrom ?? start),
      springs: springCounts(plan, item.springs),
      newSprings: changes.some(isSpringChange),
      changes: onPaper(changes),
      starts: startOf(item, read),
    };
  });
}

function startOf(item: MoveItem, read: ReturnType<typeof readerOf>): string | null {
  const line = (item.script ?? []).find(({ kind, text }) => kind === "start" && text.trim() !== "");
  return line ? read(item, line.text) : null;
}

/** The side stands beside the name; where nothing but the side changes, it is what people do. */
export function onPaper(changes: readonly SetupChange[]): readonly SetupChange[] {
  const others = changes.filter(({ kind }) => kind !== "side");
  return others.length > 0 ? others : changes;
}
