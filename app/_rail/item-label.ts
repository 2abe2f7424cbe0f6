/** An item of the rail in words. */
import { holdMarks } from "#app/_session/hold-sign.tsx";
import { nameOf } from "#app/_session/item-words.ts";
import { offsetWords, plainNumber, plural, repsWords, springWords } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import type { ItemTalk } from "#lib/talk/talk.ts";
import { talkWords } from "#lib/talk/talk-words.ts";
import type { ItemMarks } from "./marks.ts";

interface LabelFacts {
  readonly start: string;
  readonly reps: number | null;
  readonly talk: ItemTalk | undefined;
  readonly marks?: ItemMarks | undefined;
}

/** What a screen reader says of an item. */
export function itemLabel(plan: Plan, item: PlanItem, row: LabelFacts): string {
  const parts = [item.kind === "heading" ? `Heading: ${nameOf(plan, item)}` : nameOf(plan, item)];
  if (item.kind === "move" && item.side !== "both") parts.push(item.side);
  if (item.kind !== "heading") parts.push(`${plainNumber(item.seconds)} seconds from ${row.start}`);
  if (item.kind === "move") parts.push(springWords(plan.equipment, item.springs));
  if (item.kind === "move" && (item.offsetMm ?? 0) !== 0) parts.push(`starting ${offsetWords(item.offsetMm ?? 0)}`);
  const pattern = item.kind === "move" ? moveOf(plan, item)?.pattern : undefined;
  if (pattern) parts.push(pattern);
  if (row.reps !== null) parts.push(repsWords(row.reps));
  if (row.talk) parts.push(talkWords(row.talk));
  if (item.kind === "move" && item.locked) parts.push("locked");
  if (item.kind === "move") parts.push(...holdMarks(plan, item).map((mark) => mark.words));
  if (row.marks) parts.push(...markWords(row.marks));
  return parts.join(", ");
}

/** The worst that was found in words, how much more there is, and open threads. */
function markWords({ must, look, threads, proposals, worst }: ItemMarks): string[] {
  const more = must + look - 1;
  return [
    ...(worst === null ? [] : [`${must > 0 ? "must fix" : "look again"}: ${worst}`]),
    ...(more > 0 ? [`${more} more found`] : []),
    ...(threads > 0 ? [plural(threads, "open thread")] : []),
    ...(proposals > 0 ? [plural(proposals, "proposal")] : []),
  ];
}
