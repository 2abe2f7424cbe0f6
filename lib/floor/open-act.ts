/**
 * Which act of a change is open, that is, shown largest: the one being said. The voice decides, not a guess at what hands
 * do: the acts share the time of the set-up lines by the length of their words. The last one stays open until the last
 * seconds, in which the springs are checked.
 */
import type { SetupChange } from "#lib/cues/changes.ts";
import type { Cue } from "#lib/cues/types.ts";
import { SAME_MOMENT } from "#lib/numbers/round.ts";
import type { FloorStep } from "./steps.ts";

/** Seconds before the end of a change in which people check their springs. Our own choice, to be tried with coaches. */
const CHECK_SECONDS = 5;
/** Of a short change the check takes this share at most. */
const CHECK_SHARE = 1 / 3;
/** Without a set-up line, the acts share this part of the change. */
const UNSAID_SHARE = 0.6;

/** `position`: seconds of the class. The index of the open act; the number of acts while the springs are checked. */
export function openActAt(
  acts: readonly SetupChange[],
  lines: readonly Pick<Cue, "from" | "to">[],
  { from, to }: Pick<FloorStep, "from" | "to">,
  position: number,
): number {
  const [first, last] = [lines[0], lines.at(-1)];
  const begins = first?.from ?? from;
  const ends = Math.min(last?.to ?? from + (to - from) * UNSAID_SHARE, to);
  const check = Math.max(ends, to - Math.min(CHECK_SECONDS, (to - from) * CHECK_SHARE));
  if (position >= check - SAME_MOMENT) return acts.length;
  const letters = acts.map(({ words }) => words.length);
  const all = letters.reduce((sum, n) => sum + n, 0);
  const said = ends > begins ? ((position - begins) / (ends - begins)) * all : all;
  let reached = 0;
  const open = letters.findIndex((n) => {
    reached += n;
    return said < reached;
  });
  return open < 0 ? Math.max(0, acts.length - 1) : open;
}
