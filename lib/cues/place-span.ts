/**
 * Places the lines of one span: chooses what is said (`one-voice.ts`), then when. Lines of the work are spread over the
 * available time, set-up waits for the change, and every line stays in its window.
 */
import { isTooMuch, oneVoice, type VoicePlan } from "./one-voice.ts";
import { earliestBegins, latestBegins, type Spoken } from "./said-order.ts";
import type { Cue, DroppedLine, SpokenKind } from "./types.ts";
import type { Window } from "./windows.ts";
import { SAID_FIRST, worthOfKind } from "./worth.ts";

/** A line to be placed. Times are seconds from the start of its span. */
export interface LineWish {
  readonly item: string;
  readonly kind: SpokenKind;
  readonly text: string;
  readonly window: Window;
  /** When it would best begin; undefined means soon after the line before it. */
  readonly wanted?: number;
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

/** The longest silence between two lines, so that they stay close to what they are about. Tenths. */
const LONGEST_GAP = 60;

/** A quick check: true when something must surely be set aside. */
export const isOverfull = (wishes: readonly LineWish[]): boolean => isTooMuch(wishes.map((wish) => spoken(wish, [])));

/** The wishes in their preferred order, and what `oneVoice` needs to know of them. */
export function spokenLines(wishes: readonly LineWish[]): {
  readonly sorted: readonly LineWish[];
  readonly lines: Spoken[];
} {
  const sorted = [...wishes].sort((a, b) => SAID_FIRST[a.kind] - SAID_FIRST[b.kind]);
  const before = mustComeBefore(sorted);
  return { sorted, lines: sorted.map((wish, n) => spoken(wish, before[n] ?? [])) };
}

export function placeSpan(wishes: readonly LineWish[]): PlacedSpan {
  const { sorted, lines } = spokenLines(wishes);
  const voice = oneVoice(lines);
  const begins = beginsOf(sorted, lines, voice);
  const cues = voice.said.flatMap((place, n): Cue[] => {
    const wish = sorted[place];
    const at = (begins[n] ?? 0) / 10;
    if (!wish) return [];
    const { text, seconds } = wish.say(at);
    return [{ item: wish.item, kind: wish.kind, from: at, to: at + Math.min(seconds, wish.seconds), text }];
  });
  const dropped = voice.aside.flatMap(({ line, shortBy }): DroppedLine[] => {
    const wish = sorted[line];
    return wish ? [{ item: wish.item, kind: wish.kind, text: wish.text, shortBy: shortBy / 10 }] : [];
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

/** The start comes first; lines of one kind keep the author's order; the heads-up comes before the set-up. */
function mustPrecede(first: LineWish, then: LineWish): boolean {
  if (first.kind === "start") return ofWork(then.kind);
  if (first.kind === "heads-up") return isSetup(then.kind);
  return first.kind === then.kind || (isSetup(first.kind) && isSetup(then.kind));
}

/** When each line begins, in tenths: as early as allowed and wanted, with spare time shared between lines of the work. */
function beginsOf(wishes: readonly LineWish[], lines: readonly Spoken[], { said }: VoicePlan): number[] {
  const latest = latestBegins(lines, said);
  const gap = spareGap(wishes, lines, said);
  let free = Number.NEGATIVE_INFINITY;
  return said.map((place, n) => {
    const line = lines[place] as Spoken;
    const wish = wishes[place] as LineWish;
    const wanted = wish.wanted === undefined ? free + gap : Math.ceil(wish.wanted * 10 - 1e-6);
    const begin = Math.min(latest[n] ?? 0, Math.max(free, line.earliest, wanted));
    free = begin + line.length;
    return begin;
  });
}

/** The silence before each line of the work: the spare time up to the heads-up, shared between them. */
function spareGap(wishes: readonly LineWish[], lines: readonly Spoken[], said: readonly number[]): number {
  const work = said.filter((place) => ofWork((wishes[place] as LineWish).kind));
  const first = work[0];
  if (first === undefined) return 0;
  const end = earliestCall(wishes, lines, said) ?? Math.max(...work.map((place) => (lines[place] as Spoken).latest));
  const talk = work.reduce((sum, place) => sum + (lines[place] as Spoken).length, 0);
  const spare = end - (lines[first] as Spoken).earliest - talk;
  return Math.max(0, Math.min(LONGEST_GAP, Math.floor(spare / work.length)));
}

function earliestCall(
  wishes: readonly LineWish[],
  lines: readonly Spoken[],
  said: readonly number[],
): number | undefined {
  const begins = earliestBegins(lines, said);
  const call = said.findIndex((place) => (wishes[place] as LineWish).kind === "heads-up");
  return call === -1 ? undefined : begins[call];
}
