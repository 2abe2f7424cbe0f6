/**
 * Places the lines of one span: chooses what is said (`one-voice.ts`), then when (`line-begins.ts`). Lines of the work are
 * spread over the available time, set-up waits for the change, and every line stays in its window.
 */

import { beginsOf } from "./line-begins.ts";
import { isTooMuch, oneVoice } from "./one-voice.ts";
import type { Spoken } from "./said-order.ts";
import type { Cue, DroppedLine, SpokenKind } from "./types.ts";
import type { Window } from "./windows.ts";
import { SAID_FIRST, worthOfKind } from "./worth.ts";

/** A line to be placed. Times are seconds from the start of its span. */
export interface LineWish {
  readonly item: string;
  readonly kind: SpokenKind;
  readonly text: string;
  readonly window: Window;
  /** When it would best begin; undefined for a line that is spread over its time with others. */
  readonly wanted?: number;
  /** True for a line whose author gave the moment; its window holds that moment only. */
  readonly isMoment?: boolean;
  /** Index in the item's script; undefined for the plan's own calls. */
  readonly line?: number;
  /** Seconds reserved for it: the longest it can take anywhere in its window. */
  readonly seconds: number;
  /** The text as said at a time. */
  readonly say: (at: number) => { readonly text: string; readonly seconds: number };
}

export interface PlacedSpan {
  readonly cues: readonly Cue[];
  readonly dropped: readonly DroppedLine[];
  /** The worth of the lines set aside; 0 when everything is said. */
  readonly lost: number;
  /** Seconds of all that is said, before rounding. */
  readonly talkSeconds: number;
}

/** A quick check: true when something must surely be set aside. */
export const isOverfull = (wishes: readonly LineWish[]): boolean => isTooMuch(wishes.map((wish) => spoken(wish, [])));

/** The wishes in their preferred order, and what `oneVoice` needs to know of them. */
export function spokenLines(
  wishes: readonly LineWish[],
  work: Window | undefined,
): {
  readonly sorted: readonly LineWish[];
  readonly lines: Spoken[];
} {
  const preferred = [...wishes].sort((a, b) => SAID_FIRST[a.kind] - SAID_FIRST[b.kind]);
  const sorted = withMoments(preferred, work);
  const before = mustComeBefore(sorted);
  return { sorted, lines: sorted.map((wish, n) => spoken(wish, before[n] ?? [])) };
}

/** The preferred order with the lines that have a moment put in where it comes, as if the others were spread without them. */
function withMoments(sorted: readonly LineWish[], work: Window | undefined): readonly LineWish[] {
  const fixed = sorted.filter(({ isMoment }) => isMoment);
  if (fixed.length === 0) return sorted;
  const others = sorted.filter(({ isMoment }) => !isMoment);
  const lines = others.map((wish) => spoken(wish, []));
  const begins = beginsOf({ wishes: others, lines, work }, [...others.keys()]);
  const middles = new Map(others.map((wish, n) => [wish, (begins[n] ?? 0) / 10 + wish.seconds / 2]));
  const middle = (wish: LineWish): number => middles.get(wish) ?? wish.window.from + wish.seconds / 2;
  const order = [...others];
  for (const wish of fixed.sort((a, b) => a.window.from - b.window.from)) {
    const at = order.findIndex((other) => middle(other) > middle(wish));
    order.splice(at < 0 ? order.length : at, 0, wish);
  }
  return order;
}

/** `work`: when the work lasts during which lines are spread; undefined before the first move. */
export function placeSpan(wishes: readonly LineWish[], work: Window | undefined): PlacedSpan {
  const { sorted, lines } = spokenLines(wishes, work);
  const voice = oneVoice(lines);
  const begins = beginsOf({ wishes: sorted, lines, work }, voice.said);
  const cues = voice.said.flatMap((place, n): Cue[] => {
    const wish = sorted[place];
    const at = (begins[n] ?? 0) / 10;
    if (!wish) return [];
    const { text, seconds } = wish.say(at);
    const { item, kind, line } = wish;
    return [{ item, kind, from: at, to: at + Math.min(seconds, wish.seconds), text, line }];
  });
  const dropped = voice.aside.flatMap(({ line, shortBy }): DroppedLine[] => {
    const wish = sorted[line];
    if (!wish) return [];
    const { item, kind, text, line: index } = wish;
    return [{ item, kind, text, shortBy: shortBy / 10, line: index }];
  });
  return {
    cues,
    dropped,
    lost: dropped.reduce((sum, line) => sum + worthOfKind(line.kind), 0),
    talkSeconds: cues.reduce((sum, cue) => sum + cue.to - cue.from, 0),
  };
}

/** A line in whole tenths. Rounding only ever shrinks a window and lengthens a line. */
function spoken(wish: LineWish, after: readonly number[]): Spoken {
  return {
    length: Math.max(1, Math.ceil(wish.seconds * 10 - 1e-6)),
    earliest: Math.ceil(wish.window.from * 10 - 1e-6),
    latest: Math.floor(wish.window.to * 10 + 1e-6),
    worth: worthOfKind(wish.kind),
    after,
  };
}

/** For each line the indices of those that must be said before it. */
const mustComeBefore = (wishes: readonly LineWish[]): readonly (readonly number[])[] =>
  wishes.map((wish, place) => {
    const before: number[] = [];
    for (let n = 0; n < place; n++) if (mustPrecede(wishes[n] as LineWish, wish)) before.push(n);
    return before;
  });

const ofWork = (kind: SpokenKind): boolean => !isSetup(kind) && kind !== "heads-up" && kind !== "count-in";
const isSetup = (kind: SpokenKind): boolean => kind === "setup" || kind === "safety";

/**
 * The start comes first; lines of one kind keep the author's order; the heads-up comes before the set-up. A line with a
 * moment of its own comes when it comes.
 */
function mustPrecede(first: LineWish, then: LineWish): boolean {
  if (first.isMoment || then.isMoment) return false;
  if (first.kind === "start") return ofWork(then.kind);
  if (first.kind === "heads-up") return isSetup(then.kind);
  return first.kind === then.kind || (isSetup(first.kind) && isSetup(then.kind));
}
