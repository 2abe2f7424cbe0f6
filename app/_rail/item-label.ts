/** An item of the rail in words. */

import type { ChangeMark } from "#app/_session/changes-shown.ts";
import type { HoldMark } from "#app/_session/hold-sign.tsx";
import { nameOf } from "#app/_session/item-words.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { offsetWords } from "#lib/formats/units.ts";
import { plainNumber, plural, repsWords, springWords } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import type { ItemTalk } from "#lib/talk/talk.ts";
import { talkWords } from "#lib/talk/talk-words.ts";
import type { ItemMarks } from "./marks.ts";

export interface LabelFacts {
  readonly start: string;
  readonly reps: number | null;
  readonly talk: ItemTalk | undefined;
  readonly holds: readonly HoldMark[];
  readonly marks?: ItemMarks | undefined;
  readonly change?: ChangeMark | undefined;
}

/** What a screen reader says of an item. */
export function itemLabel(plan: Plan, item: PlanItem, row: LabelFacts, f: Formats): string {
  const parts = [item.kind === "heading" ? `Heading: ${nameOf(plan, item)}` : nameOf(plan, item)];
  if (item.kind === "move" && item.side !== "both") parts.push(item.side);
  if (item.kind !== "heading") parts.push(`${plainNumber(item.seconds)} seconds from ${row.start}`);
  if (item.kind === "move") parts.push(springWords(plan.equipment, item.springs));
  if (item.kind === "move" && (item.offsetMm ?? 0) !== 0) parts.push(`starting ${offsetWords(item.offsetMm ?? 0, f)}`);
  const pattern = item.kind === "move" ? moveOf(plan, item)?.pattern : undefined;
  if (pattern) parts.push(pattern);
  if (row.reps !== null) parts.push(repsWords(row.reps));
  if (row.talk) parts.push(talkWords(row.talk));
  if (item.kind === "move" && item.locked) parts.push("locked");
  parts.push(...row.holds.map((mark) => mark.words));
  if (row.marks) parts.push(...markWords(row.marks));
  if (row.change) parts.push(...changeWords(row.change));
  return parts.join(", ");
}

function changeWords({ word, read, goneAbove, goneBelow }: ChangeMark): string[] {
  const removed = (names: readonly string[], where: string) => names.map((name) => `${name} removed ${where} it`);
  return [
    ...(word === null ? [] : [read ? `${word}, read` : word]),
    ...removed(goneAbove, "above"),
    ...removed(goneBelow, "below"),
  ];
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
