/**
 * Places one move's lines on the clock, for one voice. The method is greedy: the lines that must be said come first and
 * may run over, the two calls before the end are reserved next, and what is left of the time is filled in order of worth.
 * It never overlaps and never says in time what did not fit; it does not promise the best possible choice of what to drop.
 */
import type { ClockRow } from "#lib/clock/clock.ts";
import { countWord } from "#lib/plan/format.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import type { Cue, DroppedLine, SpokenKind } from "./types.ts";

/** Everything about one item that placing its lines needs. Times are seconds from the start of the class. */
export interface ItemTalk {
  readonly row: ClockRow;
  readonly script: readonly ScriptLine[];
  /** When the voice is free: nothing of this item is said before. */
  readonly free: number;
  /** The first move may be set up in the opening: its set-up ends at its start instead of filling a transition. */
  readonly first: boolean;
  readonly headsUp: { readonly seconds: number; readonly texts: readonly string[] };
  readonly countIn: number;
  /** Seconds it takes to say a text. */
  readonly secondsOf: (text: string) => number;
  /** The text with its live fields as they are true at a time. */
  readonly fill: (text: string, at: number) => string;
}

export interface PlacedTalk {
  readonly cues: readonly Cue[];
  readonly dropped: readonly DroppedLine[];
}

/** Worth of the lines that may be dropped, highest first. */
const WORTH: readonly SpokenKind[] = ["breath", "easier", "form", "focus", "harder"];
/** The longest silence put between two lines, so that talk stays near what it is about. Seconds. */
const LONGEST_GAP = 6;

interface Slot {
  readonly from: number;
  readonly to: number;
}
interface Line {
  readonly kind: SpokenKind;
  readonly text: string;
}

/** Lines of one item, in order of time, and what found no place. */
export function placeItem(talk: ItemTalk): PlacedTalk {
  const lines = talk.script.filter((line): line is ScriptLine & Line => line.kind !== "crew");
  const of = (...kinds: SpokenKind[]) => lines.filter((line) => kinds.includes(line.kind));
  const { row } = talk;
  const before = inARow(talk, of("setup", "safety"), setupFrom(talk, of("setup", "safety")));
  const start = inARow(talk, of("start"), Math.max(row.start, before.free));
  const free = Math.max(row.start, start.free);
  const count = countInCue(talk, free);
  const countFrom = count.cues[0]?.from ?? row.end;
  const call = headsUpCue(talk, free, countFrom);
  const callCue = call.cues[0];
  const slots = callCue
    ? [
        { from: free, to: callCue.from },
        { from: callCue.to, to: countFrom },
      ]
    : [{ from: free, to: countFrom }];
  const rest = fillSlots(talk, of(...WORTH), slots);
  const all = [before, start, rest, call, count];
  return {
    cues: all.flatMap((part) => part.cues).sort((a, b) => a.from - b.from),
    dropped: all.flatMap((part) => part.dropped),
  };
}

function setupFrom(talk: ItemTalk, lines: readonly Line[]): number {
  const { row, free } = talk;
  if (!talk.first) return Math.max(free, row.transitionFrom);
  const needed = lines.reduce((sum, line) => sum + talk.secondsOf(talk.fill(line.text, row.start)), 0);
  return Math.max(free, row.start - needed);
}

/** One after the other from a time on; what would end after the item is dropped. */
function inARow(talk: ItemTalk, lines: readonly Line[], from: number): PlacedTalk & { readonly free: number } {
  const cues: Cue[] = [];
  const dropped: DroppedLine[] = [];
  let at = from;
  for (const line of lines) {
    const cue = say(talk, line, at);
    if (cue.to > talk.row.end) {
      dropped.push(drop(talk, line, cue.to - talk.row.end));
    } else {
      cues.push(cue);
      at = cue.to;
    }
  }
  return { cues, dropped, free: at };
}

function countInCue(talk: ItemTalk, free: number): PlacedTalk {
  const { row } = talk;
  const seconds = Math.floor(Math.min(talk.countIn, row.end - row.start));
  if (seconds < 1) return { cues: [], dropped: [] };
  const text = Array.from({ length: seconds }, (_, n) => countWord(seconds - n)).join(", ");
  const from = row.end - seconds;
  if (from < free) return { cues: [], dropped: [drop(talk, { kind: "count-in", text }, free - from)] };
  return { cues: [{ item: row.item, kind: "count-in", from, to: row.end, text }], dropped: [] };
}

function headsUpCue(talk: ItemTalk, free: number, countFrom: number): PlacedTalk {
  const { row, headsUp } = talk;
  if (headsUp.seconds <= 0) return { cues: [], dropped: [] };
  const from = Math.max(row.end - headsUp.seconds, free);
  const tries = headsUp.texts.map((text) => say(talk, { kind: "heads-up", text }, from));
  const fits = tries.find((cue) => cue.to <= countFrom);
  if (fits) return { cues: [fits], dropped: [] };
  const shortest = tries.at(-1);
  if (!shortest) return { cues: [], dropped: [] };
  return { cues: [], dropped: [drop(talk, shortest, shortest.to - countFrom)] };
}

/** Chooses by worth what fits in the free stretches, then says it in the author's order, breath first, easier next. */
function fillSlots(talk: ItemTalk, lines: readonly Line[], slots: readonly Slot[]): PlacedTalk {
  const seconds = (line: Line) => talk.secondsOf(talk.fill(line.text, talk.row.start));
  const left = slots.map((slot) => Math.max(0, slot.to - slot.from));
  const chosen = new Map<Line, number>();
  const dropped: DroppedLine[] = [];
  for (const line of [...lines].sort((a, b) => WORTH.indexOf(a.kind) - WORTH.indexOf(b.kind))) {
    const need = seconds(line);
    const slot = left.findIndex((room) => room >= need);
    if (slot === -1) {
      dropped.push(drop(talk, line, need - Math.max(0, ...left)));
    } else {
      left[slot] = (left[slot] ?? 0) - need;
      chosen.set(line, slot);
    }
  }
  const rank = (line: Line) => (line.kind === "breath" ? 0 : line.kind === "easier" ? 1 : 2);
  const inOrder = lines.filter((line) => chosen.has(line)).sort((a, b) => rank(a) - rank(b));
  const placed = slots.map((slot, n) =>
    spread(
      talk,
      inOrder.filter((line) => chosen.get(line) === n),
      slot,
      left[n] ?? 0,
    ),
  );
  return {
    cues: placed.flatMap((part) => part.cues),
    dropped: [...dropped, ...placed.flatMap((part) => part.dropped)],
  };
}

/** Lines over one stretch, the spare time shared between them. A live field that grew its line may still push it out. */
function spread(talk: ItemTalk, lines: readonly Line[], slot: Slot, spare: number): PlacedTalk {
  const gap = Math.min(LONGEST_GAP, spare / (lines.length + 1));
  const cues: Cue[] = [];
  const dropped: DroppedLine[] = [];
  let at = slot.from;
  for (const line of lines) {
    const cue = say(talk, line, at);
    if (cue.to > slot.to) {
      dropped.push(drop(talk, line, cue.to - slot.to));
    } else {
      cues.push(cue);
      at = cue.to + gap;
    }
  }
  return { cues, dropped };
}

function say(talk: ItemTalk, line: Line, at: number): Cue {
  const text = talk.fill(line.text, at);
  return { item: talk.row.item, kind: line.kind, from: at, to: at + talk.secondsOf(text), text };
}

const drop = (talk: ItemTalk, line: Line, shortBy: number): DroppedLine => ({
  item: talk.row.item,
  kind: line.kind,
  text: line.text,
  shortBy,
});
