/**
 * The words of a whole class as one text: every line where the cue track says it, with live fields filled in. Lines that
 * are set aside and crew lines stand next to the words that they were written after. Pure.
 */
import { type ClockRow, classClock } from "#lib/clock/clock.ts";
import { plural } from "#lib/plan/format.ts";
import type { CueKind, MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { asideWords, type ClassTalk, classTalk, talkInClass } from "./class-talk.ts";
import { cueTrack } from "./cue-track.ts";
import { type LineOfTrack, linesOfTrack } from "./lines-of-track.ts";
import { fillLiveFields } from "./live-fields.ts";
import type { Cue, CueTrack, DroppedLine, SpokenKind } from "./types.ts";

export interface ReadLine {
  /** Stays the same while the line keeps its place in its script. */
  readonly key: string;
  readonly kind: CueKind | SpokenKind;
  /** As said, live fields filled in. */
  readonly text: string;
  /** Seconds from the start of the class; null for lines that are not said. */
  readonly at: number | null;
  /** Seconds by which a line that is set aside did not fit; else null. */
  readonly shortBy: number | null;
  /** Index in the item's script; null for the plan's own heads-up and count-in. */
  readonly line: number | null;
}

/** A stretch of the text that belongs to one item. */
export interface ReadPart {
  readonly key: string;
  readonly item: PlanItem;
  /** True when the item had a part before: the next item's words began before its own ended. */
  readonly again: boolean;
  /** Seconds from the start of the class at which its work begins and ends. */
  readonly from: number;
  readonly to: number;
  readonly lines: readonly ReadLine[];
}

export interface ReadThrough {
  readonly parts: readonly ReadPart[];
  readonly talk: ClassTalk;
  readonly crew: number;
}

/** `track`: the plan's cue track, if the caller already has it. */
export function readThrough(plan: Plan, track: CueTrack = cueTrack(plan)): ReadThrough {
  const { rows, total } = classClock(plan);
  const linesOf = linesOfTrack(track);
  const calls = callsByItem(track);
  const timed = plan.items.flatMap((item, place): Timed[] => {
    const row = rows[place];
    if (item.kind !== "move" || !row) return [];
    return timedLines({ plan, item, row, total, place }, linesOf(item), calls.get(item.id) ?? []);
  });
  timed.sort((a, b) => a.time - b.time || a.place - b.place || a.order - b.order);
  return {
    parts: partsOf(plan.items, rows, timed),
    talk: classTalk(track, total),
    crew: timed.filter(({ line }) => line.kind === "crew").length,
  };
}

/** Sums of the text, as a paragraph to stand above it. */
export function sumsWords({ talk, crew }: Pick<ReadThrough, "talk" | "crew">): string {
  const said = `${talkInClass(talk)}, heads-ups and count-ins included, ${plural(talk.said, "line")}.`;
  return [said, asideWords(talk), crew > 0 && `${plural(crew, "line")} for the crew.`].filter(Boolean).join(" ");
}

/** What the plan itself calls, or would have called. */
type Call = Cue | DroppedLine;

function callsByItem({ cues, dropped }: CueTrack): ReadonlyMap<string, readonly Call[]> {
  const calls = new Map<string, Call[]>();
  for (const call of [...cues, ...dropped]) {
    if (call.kind === "heads-up" || call.kind === "count-in")
      calls.set(call.item, [...(calls.get(call.item) ?? []), call]);
  }
  return calls;
}

interface Timed {
  readonly line: ReadLine;
  /** Sort keys: seconds, then the item's index, then the line's order in the item. */
  readonly time: number;
  readonly place: number;
  readonly order: number;
}

interface Where {
  readonly plan: Plan;
  readonly item: MoveItem;
  readonly row: ClockRow;
  readonly total: number;
  readonly place: number;
}

function timedLines(where: Where, lines: readonly LineOfTrack[], calls: readonly Call[]): Timed[] {
  const { item, place, row } = where;
  // A line that is not said follows the words it was written after, or starts its item when there are none.
  let time = lines.find(({ cue }) => cue)?.cue?.from ?? row.start;
  const written = lines.map((one): Timed => {
    time = one.cue?.from ?? time;
    return { line: readLine(where, one), time, place, order: one.index };
  });
  const last = Math.max(row.start, ...written.map((one) => one.time));
  const called = calls.map((call, n): Timed => {
    const at = "from" in call ? call.from : null;
    const shortBy = "shortBy" in call ? call.shortBy : null;
    const text = at === null ? filled(where, call.text) : call.text;
    const line = { key: `${item.id} ${call.kind}`, kind: call.kind, text, at, shortBy, line: null };
    return { line, time: at ?? last, place, order: lines.length + n };
  });
  return [...written, ...called];
}

/** A line without a time of its own, worded as of the start of the work. */
const filled = ({ plan, item, row, total }: Where, text: string): string =>
  fillLiveFields(text, { plan, item, row, total, at: row.start });

function readLine(where: Where, { line, index, cue, dropped }: LineOfTrack): ReadLine {
  const text = cue?.text ?? filled(where, line.text);
  const { kind } = line;
  return {
    key: `${where.item.id} ${index}`,
    kind,
    text,
    at: cue?.from ?? null,
    shortBy: dropped?.shortBy ?? null,
    line: index,
  };
}

/** Starts a part wherever another item's words begin. Items without words come before the next item that has some. */
function partsOf(items: readonly PlanItem[], rows: readonly ClockRow[], timed: readonly Timed[]): ReadPart[] {
  const parts: (ReadPart & { readonly lines: ReadLine[] })[] = [];
  const seen = new Set<number>();
  const open = (place: number) => {
    const [item, row] = [items[place], rows[place]];
    if (!item || !row) return;
    const again = seen.has(place);
    seen.add(place);
    const key = again ? `${item.id} again ${parts.length}` : item.id;
    parts.push({ key, item, again, from: row.start, to: row.end, lines: [] });
  };
  const withWords = new Set(timed.map(({ place }) => place));
  const openSilent = (before: number) => {
    for (let place = 0; place < before; place++) if (!seen.has(place) && !withWords.has(place)) open(place);
  };
  let current: number | undefined;
  for (const { line, place } of timed) {
    if (place !== current) {
      openSilent(place);
      open(place);
    }
    current = place;
    parts.at(-1)?.lines.push(line);
  }
  openSilent(items.length);
  return parts;
}

/** `next`, with each unchanged part replaced by the same object of `before`, so that it is not rendered again. */
export function keepSameParts(next: readonly ReadPart[], before: readonly ReadPart[]): readonly ReadPart[] {
  const old = new Map(before.map((part) => [part.key, part]));
  return next.map((part) => {
    const was = old.get(part.key);
    return was !== undefined && JSON.stringify(was) === JSON.stringify(part) ? was : part;
  });
}
