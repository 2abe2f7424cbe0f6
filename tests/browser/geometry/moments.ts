/** The moments of a class that look different: every step's first second, its call, its count-in, its longest line. */
import type { Card } from "#lib/card/schema.ts";
import { type FloorPhase, floorSteps } from "#lib/floor/steps.ts";
import { headSeconds } from "#lib/plan/lookup.ts";

export interface Moment {
  /** Index of the step. */
  readonly step: number;
  readonly phase: FloorPhase;
  /** Seconds from the start of the class. */
  readonly at: number;
}

/**
 * `lines`: also the start of the longest line, for screens that show what is said. `oneEach`: of every step only one, by turns
 * its first, its next and so on from this number, so that steps of one kind have all of theirs between them.
 */
export function momentsOf(card: Card, lines: boolean, oneEach?: number): Moment[] {
  const turns = new Map<FloorPhase, number>();
  const calls = headSeconds(card.plan, "headsUpSeconds");
  return floorSteps(card).flatMap(({ phase, from, to }, step): Moment[] => {
    const plain = [from + 0.1];
    if (phase === "work") plain.push(Math.max(from + 0.2, to - calls + 0.1), to - 0.5);
    if (phase === "change") plain.push(from + (to - from) / 4, from + (to - from) / 2, to - 0.5);
    const cues = lines ? card.cues.filter((cue) => cue.from >= from && cue.from < to) : [];
    const longest = cues.sort((a, b) => b.text.length - a.text.length).slice(0, 1);
    const said = longest.map((cue) => cue.from + 0.1);
    const times = [...new Set([...plain, ...said].map((at) => Math.min(at, to - 0.1)))].sort((a, b) => a - b);
    const turn = turns.get(phase) ?? oneEach ?? 0;
    turns.set(phase, turn + 1);
    const taken = oneEach === undefined ? times : times.slice(turn % times.length).slice(0, 1);
    return taken.map((at) => ({ step, phase, at }));
  });
}
