/** A card as the rows of one page for camera crew and demonstrator: times, facing, what changes, when the coach speaks. */

import { readerOf } from "#lib/cues/as-read.ts";
import { type SetupChange, setupChanges } from "#lib/cues/changes.ts";
import { type SpringCount, springCounts } from "#lib/cues/springs.ts";
import { tenth } from "#lib/numbers/round.ts";
import { moveName, sideWords } from "#lib/plan/format.ts";
import { isMoveItem, moveOf } from "#lib/plan/lookup.ts";
import type { Facing, MoveItem } from "#lib/plan/schema.ts";
import type { Card } from "./schema.ts";
import { onPaper } from "./sheet.ts";

/** How long the coach speaks between two moments of the class. Seconds. */
export interface VoiceStretch {
  readonly seconds: number;
  /** The longest silence, if it is long enough for a shot of its own; else null. */
  readonly quiet: { readonly from: number; readonly to: number } | null;
}
export interface CrewMove {
  readonly kind: "move";
  readonly id: string;
  /** 1, 2, ... among the moves, as on the print sheet. */
  readonly number: number;
  readonly title: string;
  /** Null for both sides at once. */
  readonly side: string | null;
  /** When the change into it begins, and when the work does. */
  readonly at: number;
  readonly start: number;
  readonly seconds: number;
  readonly facing: Facing | null;
  /** True for the first move, and when people face another way than before. */
  readonly turns: boolean;
  readonly springs: readonly SpringCount[];
  readonly newSprings: boolean;
  /** What people do to get there, springs included, in a safe order. */
  readonly changes: readonly SetupChange[];
  /** The lines for the crew, with live fields filled in as of the start of the work. */
  readonly lines: readonly string[];
  readonly voice: VoiceStretch;
}
export type CrewRow =
  | { readonly kind: "heading"; readonly id: string; readonly title: string; readonly at: number }
  | {
      readonly kind: "pause";
      readonly id: string;
      readonly title: string;
      readonly at: number;
      readonly seconds: number;
      readonly voice: VoiceStretch;
    }
  | CrewMove;

/** Shorter silences are too short for a shot of their own. Common practice, no source. Seconds. */
const QUIET = 15;

/** The rows of a card, in plan order. */
export function crewRows(card: Card): CrewRow[] {
  const { plan, clock } = card;
  let number = 0;
  return plan.items.flatMap((item, index): CrewRow[] => {
    const row = clock.rows.find((r) => r.item === item.id);
    if (!row) return [];
    const { id } = item;
    if (item.kind === "heading") return [{ kind: "heading", id, title: item.title, at: row.start }];
    const voice = voiceBetween(card, row.transitionFrom, row.end);
    const { seconds } = item;
    if (item.kind === "pause")
      return [{ kind: "pause", id, title: item.text || "Pause", at: row.start, seconds, voice }];
    number += 1;
    return [moveRow(card, item, { index, number, at: row.transitionFrom, start: row.start, voice })];
  });
}

type MoveAt = Pick<CrewMove, "number" | "at" | "start" | "voice"> & { readonly index: number };

function moveRow(card: Card, item: MoveItem, { index, ...at }: MoveAt): CrewMove {
  const { plan, clock } = card;
  const before = plan.items.slice(0, index).findLast(isMoveItem);
  const changes = onPaper(setupChanges(plan, before, item));
  const asRead = readerOf(plan, clock);
  const facingOf = (one: MoveItem): Facing | null => one.facing ?? moveOf(plan, one)?.facing ?? null;
  return {
    kind: "move",
    id: item.id,
    ...at,
    title: moveName(plan, item),
    side: item.side === "both" ? null : sideWords(item.side),
    seconds: item.seconds,
    facing: facingOf(item),
    turns: before === undefined || facingOf(before) !== facingOf(item),
    springs: springCounts(plan, item.springs),
    newSprings: changes.some(({ kind }) => kind.startsWith("spring")),
    changes,
    lines: (item.script ?? []).filter(({ kind }) => kind === "crew").map(({ text }) => asRead(item, text)),
    voice: at.voice,
  };
}

/** The cue track has one voice and no overlaps, so talk is a sum of cues and silence is the gaps between them. */
function voiceBetween({ cues }: Card, from: number, to: number): VoiceStretch {
  const said = cues
    .map((cue) => ({ from: Math.max(from, cue.from), to: Math.min(to, cue.to) }))
    .filter((span) => span.to > span.from)
    .sort((a, b) => a.from - b.from);
  const starts = [from, ...said.map((span) => span.to)];
  const ends = [...said.map((span) => span.from), to];
  const gaps = starts.map((start, n) => ({ from: start, to: ends[n] ?? to }));
  const longest = gaps.reduce((best, gap) => (gap.to - gap.from > best.to - best.from ? gap : best), {
    from,
    to: from,
  });
  const seconds = said.reduce((sum, span) => sum + span.to - span.from, 0);
  return { seconds: tenth(seconds), quiet: longest.to - longest.from >= QUIET ? longest : null };
}

/** True when there is no talk worth listing, as "quiet" instead of "coach 14 s". */
export const isQuiet = ({ seconds }: VoiceStretch): boolean => seconds < 0.5;
