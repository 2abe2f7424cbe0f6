/**
 * The cue track of a class: one voice from the first set-up to the last count, every line in its window (`windows.ts`),
 * the choice of what is said exact (`one-voice.ts`), or by how many seconds it does not fit.
 */
import { classClock } from "#lib/clock/clock.ts";
import { countWord, moveName } from "#lib/plan/format.ts";
import { headSeconds, moveItems } from "#lib/plan/lookup.ts";
import type { CueKind, MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { escapeScriptText } from "#lib/plan/script-text.ts";
import { syllablesOfNumber } from "#lib/talk/syllables.ts";
import { spokenSeconds } from "#lib/talk/talk.ts";
import { changeCall } from "./changes.ts";
import { keptSpan, spanKeys } from "./kept-spans.ts";
import { fillLiveFields } from "./live-fields.ts";
import type { Spoken } from "./one-voice.ts";
import { isOverfull, type PlacedSpan, placeSpan, spokenLines, type Wish } from "./place-span.ts";
import type { Cue, CueTrack, DroppedLine, SpokenKind } from "./types.ts";
import { countInSeconds, type Placed, setupWindow, type Window, workWindow } from "./windows.ts";

/** A line without words, dots only, still takes a moment. Seconds. */
const SHORTEST = 0.5;

/** Places every spoken line of a plan, or says by how many seconds it does not fit. Pure; never overlaps. */
export function cueTrack(plan: Plan): CueTrack {
  const spans = spansOf(plan);
  const total = spans[0]?.total ?? 0;
  const keyOf = spanKeys(plan, total);
  return tracked(
    spans.map((span) => keptSpan(keyOf(span), () => placedSpan(span))),
    total,
  );
}

/** What one voice is asked for each span of a plan: its lines, with the whole heads-up first, then with shorter ones. */
export const voiceProblems = (plan: Plan): Spoken[][][] =>
  spansOf(plan).map((span) => triesOf(span).map((wishes) => spokenLines(wishes).lines));

function spansOf(plan: Plan): Span[] {
  const { rows, total } = classClock(plan);
  const rowOf = new Map(rows.map((row) => [row.item, row]));
  const moves = moveItems(plan).flatMap((item): Placed[] => {
    const row = rowOf.get(item.id);
    return row ? [{ item, row }] : [];
  });
  return [undefined, ...moves].map((work, n) => ({ plan, total, work, next: moves[n], after: moves[n + 1] }));
}

/** From the start of one move (none: of the class) to the start of the next (none: the end of the class). */
interface Span {
  readonly plan: Plan;
  readonly total: number;
  readonly work: Placed | undefined;
  readonly next: Placed | undefined;
  /** The move after `next`. */
  readonly after: Placed | undefined;
}

/** The lines of a span, once for each heads-up it may have. */
function triesOf(span: Span): Wish[][] {
  const { work, next } = span;
  const others = [...(work ? workWishes(span, work) : []), ...(next ? setupWishes(span, next) : [])];
  const calls = work ? headsUpWishes(span, work) : [];
  return calls.length === 0 ? [others] : calls.map((call) => [...others, call]);
}

/** The best placing of a span: with the whole heads-up, or with a shorter one where that leaves more to be said. */
function placedSpan(span: Span): PlacedSpan {
  const [whole, ...shorter] = triesOf(span);
  // Where the whole call cannot be all and a shorter one is, there is nothing to weigh, and the long search is spared.
  const early = isOverfull(whole ?? []) ? shorter.map(placeSpan) : undefined;
  const complete = early?.find((placed) => placed.lost === 0);
  if (complete) return complete;
  const tries = [placeSpan(whole ?? []), ...(early ?? shorter.map(placeSpan))];
  return tries.reduce((best, other) => (other.lost < best.lost ? other : best));
}

/** The move that follows a placed one of the span. */
const following = (span: Span, placed: Placed): MoveItem | undefined =>
  placed === span.work ? span.next?.item : span.after?.item;

function workWishes(span: Span, work: Placed): Wish[] {
  const { plan } = span;
  const lines = scriptOf(work.item, (kind) => kind !== "setup" && kind !== "safety");
  const wishes = lines.map((line) => wishOf(span, work, line, workWindow(plan, work, line.kind)));
  const count = countInSeconds(plan, work.row);
  if (count < 1) return wishes;
  const text = Array.from({ length: count }, (_, n) => countWord(count - n)).join(", ");
  const said = { text, seconds: count };
  const window = workWindow(plan, work, "count-in");
  return [...wishes, { item: work.item.id, kind: "count-in", text, window, seconds: count, say: () => said }];
}

function setupWishes(span: Span, next: Placed): Wish[] {
  const lines = scriptOf(next.item, (kind) => kind === "setup" || kind === "safety");
  const window = setupWindow(span.plan, span.work, next);
  const wishes = lines.map((line) => wishOf(span, next, line, window));
  // Into the change, all together; before the first move there is no change: they end as it starts.
  const talk = wishes.reduce((sum, wish) => sum + wish.seconds, 0);
  const from = span.work ? next.row.transitionFrom : Math.max(0, next.row.start - talk);
  return wishes.map((wish, n) => (n === 0 ? { ...wish, wanted: from } : { ...wish, wanted: 0 }));
}

function headsUpWishes(span: Span, work: Placed): Wish[] {
  if (headSeconds(span.plan, "headsUpSeconds") <= 0) return [];
  const window = workWindow(span.plan, work, "heads-up");
  return headsUpTexts(span.plan, work.item).map((text) => ({
    ...wishOf(span, work, { kind: "heads-up", text }, window),
    wanted: window.from,
  }));
}

interface Line {
  readonly kind: SpokenKind;
  readonly text: string;
}
type SaidKind = Exclude<CueKind, "crew">;

function scriptOf(item: MoveItem, isWanted: (kind: CueKind) => boolean): (ScriptLine & { kind: SaidKind })[] {
  return (item.script ?? []).filter(
    (line): line is ScriptLine & { kind: SaidKind } => line.kind !== "crew" && isWanted(line.kind),
  );
}

function wishOf(span: Span, placed: Placed, line: Line, window: Window): Wish {
  const { plan, total } = span;
  const { item, row } = placed;
  const next = following(span, placed);
  if (!line.text.includes("{")) {
    const said = { text: line.text, seconds: Math.max(SHORTEST, spokenSeconds(plan, line.text)) };
    return { item: item.id, kind: line.kind, text: line.text, window, seconds: said.seconds, say: () => said };
  }
  const say = (at: number) => {
    const text = fillLiveFields(line.text, { plan, item, next, row, total, at });
    return { text, seconds: Math.max(SHORTEST, spokenSeconds(plan, text)) };
  };
  const seconds = longest(line.text, window, say, { end: row.end, total });
  return { item: item.id, kind: line.kind, text: line.text, window, seconds: seconds, say };
}

/** Fields that say other words as time goes by. */
const TIMED = /\{(seconds|minutes)-left\}/;

/** The longest a line can take in its window: "twenty-five seconds" is longer to say than "twenty seconds". */
function longest(
  text: string,
  window: Window,
  say: Wish["say"],
  { end, total }: { end: number; total: number },
): number {
  const most = say(window.from).seconds;
  if (!TIMED.test(text)) return most;
  // Of every minute of the class the moment with the longest number of seconds is enough: say() is dear, numbers are not.
  const tries = new Map<number, { at: number; syllables: number }>();
  for (let at = window.from + 1; at <= window.to; at++) {
    const minutes = Math.round((total - at) / 60);
    const syllables = syllablesOfNumber(Math.max(0, Math.round(end - at)));
    if (syllables > (tries.get(minutes)?.syllables ?? -1)) tries.set(minutes, { at, syllables });
  }
  return [...tries.values()].reduce((longer, { at }) => Math.max(longer, say(at).seconds), most);
}

function tracked(spans: readonly PlacedSpan[], total: number): CueTrack {
  const cues: Cue[] = spans.flatMap((span) => span.cues);
  const dropped: DroppedLine[] = spans.flatMap((span) => span.dropped);
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
  const name = `Coming up: ${escapeScriptText(moveName(plan, next))}.`;
  const { acts, on } = changeCall(plan, item, next);
  const whole = `${name} ${escapeScriptText(acts)}`;
  return on === "" ? [whole, name] : [`${whole} ${escapeScriptText(on)}`, whole, name];
}
