/**
 * The cue track of a class: one voice from the first set-up to the last count. Lines keep the windows of the trade
 * (common practice, no source): set-up and safety in the change before the move, the start at the start, breath in the
 * first reps, the heads-up at its lead, the count-in in the last seconds. How they are placed is `place-item.ts`.
 */
import { classClock } from "#lib/clock/clock.ts";
import { countWord, moveName } from "#lib/plan/format.ts";
import { headSeconds, moveItems } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { escapeScriptText } from "#lib/plan/script-text.ts";
import { spokenSeconds } from "#lib/talk/talk.ts";
import { changeWords, setupChanges } from "./changes.ts";
import { fillLiveFields } from "./live-fields.ts";
import { placeItem } from "./place-item.ts";
import type { Cue, CueTrack, DroppedLine } from "./types.ts";

/** A line without words, dots only, still takes a moment. Seconds. */
const SHORTEST = 0.5;

/** Places every spoken line of a plan, or says by how many seconds it does not fit. Pure; never overlaps. */
export function cueTrack(plan: Plan): CueTrack {
  const { rows, total } = classClock(plan);
  const rowOf = new Map(rows.map((row) => [row.item, row]));
  const moves = moveItems(plan);
  const cues: Cue[] = [];
  const dropped: DroppedLine[] = [];
  for (const [n, item] of moves.entries()) {
    const row = rowOf.get(item.id);
    if (!row) continue;
    const placed = placeItem({
      row,
      script: item.script ?? [],
      free: Math.max(cues.at(-1)?.to ?? 0, n === 0 ? 0 : row.transitionFrom),
      first: n === 0,
      headsUp: { seconds: headSeconds(plan, "headsUpSeconds"), texts: headsUpTexts(plan, item) },
      countIn: headSeconds(plan, "countInSeconds"),
      secondsOf: (text) => Math.max(SHORTEST, spokenSeconds(plan, text)),
      fill: (text, at) => fillLiveFields(text, { plan, item, row, total, at }),
    });
    cues.push(...placed.cues);
    dropped.push(...placed.dropped);
  }
  return tracked(cues, dropped, total);
}

function tracked(cues: readonly Cue[], dropped: readonly DroppedLine[], total: number): CueTrack {
  const talkSeconds = cues.reduce((sum, cue) => sum + cue.to - cue.from, 0);
  return {
    cues: cues.map((cue) => ({ ...cue, from: tenth(cue.from), to: tenth(cue.to) })),
    dropped: dropped.map((line) => ({ ...line, shortBy: tenth(line.shortBy) })),
    talkSeconds: tenth(talkSeconds),
    talkShare: total > 0 ? Math.round((1000 * talkSeconds) / total) / 1000 : 0,
  };
}

const tenth = (seconds: number): number => Math.round(seconds * 10) / 10;

/**
 * What the plan itself says before a change, the full call first, then the shorter ones for when there is less time.
 * The braces of names are doubled, so that nothing in a name is taken for a live field.
 */
export function headsUpTexts(plan: Plan, item: MoveItem): string[] {
  const following = plan.items.slice(plan.items.findIndex((other) => other.id === item.id) + 1);
  const next = following.find((other) => other.kind !== "heading");
  if (!next) return ["Coming up: the close."];
  if (next.kind === "pause") return [`Coming up: a pause of ${countWord(Math.round(next.seconds))} seconds.`];
  if (next.kind !== "move") return [];
  const name = escapeScriptText(moveName(plan, next));
  const changes = changeWords(setupChanges(plan, item, next).filter((change) => change.kind !== "offset"));
  return [`Coming up: ${name}, ${escapeScriptText(changes)}.`, `Coming up: ${name}.`];
}
