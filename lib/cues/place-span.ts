/**
 * Places the lines of one span: chooses what is said (`one-voice.ts`), then gives each line its moment. Lines of the work
 * are spread over the time there is; set-up waits for the change; nothing leaves its window.
 */
import { isTooMuch, oneVoice, type VoicePlan } from "./one-voice.ts";
import { earliestBegins, latestBegins, type Spoken } from "./said-order.ts";
import type { Cue, DroppedLine, SpokenKind } from "./types.ts";
import type { Window } from "./windows.ts";
import { SAID_FIRST, worthOfKind } from "./worth.ts";

/** A line that wants to be said. Times are seconds from the start of its span. */
export interface LineWish {
  readonly item: string;
  readonly kind: SpokenKind;
  readonly text: string;
  readonly window: Window;
  /** When it would best begin; undefined: soon after the line before it. */
  readonly wanted?: number;
  /** Seconds reserved for it: the longest that it can take anywhere in its window. */
  readonly seconds: number;
  /** The text as it is said at a time. */
  readonly say: (at: number) => { readonly text: string; readonly seconds: number };
}

export interface PlacedSpan {
  readonly cues: readonly Cue[];
  readonly dropped: readonly DroppedLine[];
  /** What is lost by the lines set aside; 0 when everything is said. */
  readonly lost: number;
  /** Seconds of all that is said, as they are before anything is rounded. */
  readonly talkSeconds: number;
}

/** The longest silence put between two lines, so that talk stays near what it is about. Tenths. */
const LONGEST_GAP = 60;

/** True when it is sure at a glance that something must be set aside. */
export const isOverfull = (wishes: readonly LineWish[]): boolean => isTooMuch(wishes.map((wish) => spoken(wish, [])));

/** The wishes in the order in which they are said by choice, and what one voice has to know of them. */
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

/** A span's line in whole tenths: a window only ever shrinks by the rounding, a length only grows. */
function spoken(wish: LineWish, after: readonly number[]): Spoken {
  return {
    length: Math.max(1, Math.ceil(wish.seconds * 10 - 1e-6)),
    earliest: Math.ceil(wish.window.from * 10 - 1e-6),
    latest: Math.floor(wish.window.to * 10 + 1e-6),
    worth: worthOfKind(wish.kind),
    after,
  };
}

/** For each line the places of those that must be said before it. */
const mustComeBefore = (wishes: readonly LineWish[]): readonly (readonly number[])[] =>
  wishes.map((wish, place) => {
    const before: number[] = [];
    for (let n = 0; n < place; n++) if (mustPrecede(wishes[n] as LineWish, wish)) before.push(n);
    return before;
  });

const ofWork = (kind: SpokenKind): boolean => !isSetup(kind) && kind !== "heads-up" && kind !== "count-in";
const isSetup = (kind: SpokenKind): boolean => kind === "setup" || kind === "safety";

/** The start comes first; lines of one kind keep the author's order; what comes is called before it is set up. */
function mustPrecede(first: LineWish, then: LineWish): boolean {
  if (first.kind === "start") return ofWork(then.kind);
  if (first.kind === "heads-up") return isSetup(then.kind);
  return first.kind === then.kind || (isSetup(first.kind) && isSetup(then.kind));
}

/** Tenths at which each line begins: as early as it may and wants to be, the spare time shared between lines of the work. */
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

/** The silence before each line of the work when the spare time up to the first call is shared between them. */
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
