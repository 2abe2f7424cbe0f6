/** The two tracks that go with a recording of a class: what is said, and the chapters. */
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
import type { Card } from "#lib/card/schema.ts";
import type { Cue } from "#lib/cues/types.ts";
import { moveName } from "#lib/plan/format.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { type VttCue, vttFile } from "./webvtt.ts";

/** The cue track of an edition, named by it. */
export const cuesVtt = (card: Card): string => trackVtt(nameOf(card), card.cues, card.cautions.note);

/** "Long and strong, edition 2, lusab-babad", as on the device and on paper. */
const nameOf = ({ edition }: Card): string => `${edition.title}, edition ${edition.number}, ${edition.shortName}`;

/** A cue track as WebVTT captions, one cue per spoken line. Ids are `<n>-<kind>-<item>`. */
export function trackVtt(title: string, cues: readonly Cue[], notes: readonly string[] = SAFETY_NOTE): string {
  const withIds = cues.map((cue, n) => ({ ...cue, id: `${n + 1}-${cue.kind}-${cue.item}` }));
  return vttFile(`${title}, cues`, withIds, notes);
}

/**
 * Chapters: the opening, every heading with its moves and pauses inside, the closing. A move's chapter begins with the
 * change into it, so that jumping to it shows the set-up.
 */
export function chaptersVtt(card: Card): string {
  const { rows, total } = card.clock;
  const last = rows.at(-1)?.end ?? 0;
  const chapters: VttCue[] = [
    { id: "opening", from: 0, to: rows[0]?.transitionFrom ?? 0, text: "Opening" },
    ...card.plan.items.flatMap((item, n): VttCue[] => {
      const row = rows.find((r) => r.item === item.id);
      if (!row) return [];
      const id = `${n + 1}-${item.id}`;
      if (item.kind === "heading") return [{ id, from: row.start, to: blockEnd(card, n), text: item.title }];
      return [
        { id, from: row.transitionFrom, to: row.end, text: item.kind === "pause" ? "Pause" : moveTitle(card, item) },
      ];
    }),
    { id: "closing", from: last, to: total, text: "Closing" },
  ];
  return vttFile(`${nameOf(card)}, chapters`, chapters, card.cautions.note);
}

const moveTitle = (card: Card, item: MoveItem): string => {
  const name = moveName(card.plan, item);
  return item.side === "left" || item.side === "right" ? `${name}, ${item.side}` : name;
};

/** When the block of the heading at `index` ends: with the last item before the next heading. */
function blockEnd(card: Card, index: number): number {
  const { items } = card.plan;
  const next = items.findIndex((item, n) => n > index && item.kind === "heading");
  const lastItem = items[(next === -1 ? items.length : next) - 1];
  return card.clock.rows.find((row) => row.item === lastItem?.id)?.end ?? 0;
}
