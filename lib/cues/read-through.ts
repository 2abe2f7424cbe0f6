/**
 * The words of a whole class as one text: every line where the cue track says it, its live fields filled, and beside what
 * is said the lines that are set aside and the crew's, each next to the words it was written after. Pure.
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
  /** The same as long as the line stays where it is in its script. */
  readonly key: string;
  readonly kind: CueKind | SpokenKind;
  /** As it is heard. */
  readonly text: string;
  /** Seconds from the start of the class; null for what nobody says aloud. */
  readonly at: number | null;
  /** Seconds that were missing for a line that is set aside; else null. */
  readonly shortBy: number | null;
  /** Place in the item's script, from 0; null for what the plan itself says: heads-up and count-in. */
  readonly line: number | null;
}

/** A stretch of the text that belongs to one item. */
export interface ReadPart {
  readonly key: string;
  readonly item: PlanItem;
  /** The item had a part before: the words of the next one began before its own were over. */
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

/** `track`: the plan's own, where whoever asks has it already. */
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

/** The text's sums as one paragraph, to stand over it. */
export function sumsWords({ talk, crew }: Pick<ReadThrough, "talk" | "crew">): string {
  const said = `${talkInClass(talk)}, heads-ups and counting in included, ${plural(talk.said, "line")}.`;
  return [said, asideWords(talk), crew > 0 && `${plural(crew, "line")} for the crew.`].filter(Boolean).join(" ");
}

/** What the plan itself says, or would have said. */
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
  /** Where it stands in the text: seconds, then the item's place, then its place in the item. */
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
  // What is not said stands behind the words it was written after, at the front of its item where there are none.
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

/** A line that has no moment of its own, as it would be said when the work begins. */
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

/** Cut where another item's words begin. What has no words stands before the first words of the items after it. */
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

/** The parts of `next`, each the very object of `before` where nothing in it changed, so that it is not drawn again. */
export function keepSameParts(next: readonly ReadPart[], before: readonly ReadPart[]): readonly ReadPart[] {
  const old = new Map(before.map((part) => [part.key, part]));
  return next.map((part) => {
    const was = old.get(part.key);
    return was !== undefined && JSON.stringify(was) === JSON.stringify(part) ? was : part;
  });
}
