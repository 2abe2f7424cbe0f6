/**
 * The cue track of a class: one voice from the first set-up to the last count. Every line is in its window (`windows.ts`)
 * or set aside with the seconds it was short of; the choice of what is said is exact (`one-voice.ts`).
 */

import { classClock } from "#lib/clock/clock.ts";
import { ClockKeeper } from "#lib/clock/kept-clock.ts";
import { areSame, Kept, KeptEach } from "#lib/memo/kept.ts";
import { tenth } from "#lib/numbers/round.ts";
import { countWord, moveName } from "#lib/plan/format.ts";
import { headSeconds } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { escapeScriptText } from "#lib/plan/script-text.ts";
import { amountWords, roundMinutes, roundSeconds } from "#lib/talk/round-times.ts";
import { SyllableCounter } from "#lib/talk/syllables.ts";
import { spokenSeconds } from "#lib/talk/talk.ts";
import { changeCall } from "./changes.ts";
import { fillLiveFields } from "./live-fields.ts";
import { onClock, type SpanOnClock } from "./on-clock.ts";
import { isOverfull, type LineWish, type PlacedSpan, placeSpan, spokenLines } from "./place-span.ts";
import type { Spoken } from "./said-order.ts";
import { planOfSpan, type SpanPlace, type SpanSource, spanOf, spanPlaces, spanReads, type TalkSpan } from "./span.ts";
import type { Cue, CueTrack, DroppedLine, SpokenKind } from "./types.ts";
import {
  countInSeconds,
  type LineMoment,
  momentWindow,
  type PlacedWork,
  setupWindow,
  type Window,
  workWindow,
} from "./windows.ts";

/** A line without words, only dots for instance, still takes a moment. Seconds. */
const SHORTEST = 0.5;

/** Places every spoken line of a plan or says by how many seconds it does not fit. Pure; lines never overlap. */
export const cueTrack = (plan: Plan): CueTrack => new CueTracker().track(sourceOf(plan));

/** The problems that one voice solves for each span: its lines with the full heads-up, then with shorter ones. */
export function voiceProblems(plan: Plan): Spoken[][][] {
  const counter = new SyllableCounter();
  return spanPlaces(sourceOf(plan)).map((stretch) => {
    const plan = planOfSpan(stretch);
    const { work, called } = stretch;
    const calls = () => (work ? callsOf(plan, work.item, called) : []);
    const span = { ...spanOf(stretch), plan, counter, calls };
    return triesOf(span).map((wishes) => spokenLines(wishes, workOf(span)).lines);
  });
}

const sourceOf = (plan: Plan): SpanSource => ({
  frame: { ...plan, items: [] },
  times: plan,
  plan,
  ...new ClockKeeper().keep(classClock(plan)),
});

/** Cue tracks of one plan while it is being written: a span in which nothing changed keeps its placing. */
export class CueTracker {
  private readonly counter: SyllableCounter;
  private readonly kept = new KeptEach<KeptSpan>();
  private readonly onClock = new KeptEach<SpanOnClock>();
  private readonly whole = new Kept<CueTrack>();

  constructor(counter: SyllableCounter = new SyllableCounter()) {
    this.counter = counter;
  }

  /** One span more than there are moves. A span whose start alone moved is shifted and not placed again. */
  spans(source: SpanSource): SpanOnClock[] {
    this.kept.round();
    this.onClock.round();
    return spanPlaces(source).map((stretch) => {
      const { key, origin } = stretch;
      const { placed } = this.kept.get(key, spanReads(stretch), (was) => this.placed(stretch, was));
      return this.onClock.get(key, [placed, origin], (was) => onClock(placed, origin, was));
    });
  }

  /** Keeps the placing of a span with new items if nothing that it reads of them has changed. */
  private placed(stretch: SpanPlace, was: KeptSpan | undefined): KeptSpan {
    const span = spanOf(stretch);
    const { reads } = span;
    if (was && areSame(was.reads, reads)) return { ...was, reads };
    const plan = planOfSpan(stretch);
    const calls = was?.calls ?? new Kept();
    const { frame, work, next } = stretch;
    const called = span.called === next?.item ? next?.wordless : span.called;
    const callReads = [frame, work?.wordless, work?.move, called, next?.move];
    const callsNow = () => calls.get(callReads, () => (work ? callsOf(plan, work.item, span.called) : []));
    return { reads, calls, placed: placedSpan({ ...span, plan, counter: this.counter, calls: callsNow }) };
  }

  track(source: SpanSource, spans: readonly SpanOnClock[] = this.spans(source)): CueTrack {
    const { total } = source.clock;
    const inClass = spans.map((span) => span.inClass);
    return this.whole.get([total, ...inClass], () => tracked(inClass, total));
  }
}

interface KeptSpan extends Pick<TalkSpan, "reads"> {
  /** The heads-up in words, which no line changes. */
  readonly calls: Kept<string[]>;
  readonly placed: PlacedSpan;
}

/** A span with its plan and a syllable counter. */
interface Voiced extends TalkSpan {
  readonly plan: Plan;
  readonly counter: SyllableCounter;
  readonly calls: () => string[];
}

/** The lines of a span, once for each heads-up that it may use. */
function triesOf(span: Voiced): LineWish[][] {
  const { work, next } = span;
  const others = [...(work ? workWishes(span, work) : []), ...(next ? setupWishes(span, next) : [])];
  const calls = work ? headsUpWishes(span, work) : [];
  return calls.length === 0 ? [others] : calls.map((call) => [...others, call]);
}

const workOf = ({ work }: TalkSpan): Window | undefined => work && { from: work.row.start, to: work.row.end };

/** The best placing of a span: with the full heads-up, or a shorter one if more can then be said. */
function placedSpan(span: Voiced): PlacedSpan {
  const [whole, ...shorter] = triesOf(span);
  const place = (wishes: readonly LineWish[]): PlacedSpan => placeSpan(wishes, workOf(span));
  // If the full call cannot fit with all lines but a shorter one can, the long search is not needed.
  const early = isOverfull(whole ?? []) ? shorter.map(place) : undefined;
  const complete = early?.find((placed) => placed.lost === 0);
  if (complete) return complete;
  const tries = [place(whole ?? []), ...(early ?? shorter.map(place))];
  return tries.reduce((best, other) => (other.lost < best.lost ? other : best));
}

/** The move after a placed one of the span. */
const following = (span: Voiced, placed: PlacedWork): MoveItem | undefined =>
  placed === span.work ? span.next?.item : span.after;

function workWishes(span: Voiced, work: PlacedWork): LineWish[] {
  const { plan } = span;
  const wishes = span.lines.map(({ line, index }): LineWish => {
    if (line.at) return { ...momentWish(span, work, line, line.at), line: index };
    const window = workWindow(plan, work, line.kind);
    const wish = { ...wishOf(span, work, line, window), line: index };
    return line.kind === "start" ? { ...wish, wanted: window.from } : wish;
  });
  const count = countInSeconds(plan, work.row);
  if (count < 1) return wishes;
  const text = Array.from({ length: count }, (_, n) => countWord(count - n)).join(", ");
  const said = { text, seconds: count };
  const window = workWindow(plan, work, "count-in");
  return [
    ...wishes,
    { item: work.item.id, kind: "count-in", text, window, wanted: window.from, seconds: count, say: () => said },
  ];
}

function setupWishes(span: Voiced, next: PlacedWork): LineWish[] {
  const window = setupWindow(span.plan, span.work, next);
  const wishes = span.setupLines.map(({ line, index }) => ({ ...wishOf(span, next, line, window), line: index }));
  // Together from the start of the change. Before the first move there is no change, so they end when it starts.
  const talk = wishes.reduce((sum, wish) => sum + wish.seconds, 0);
  const from = span.work ? next.row.transitionFrom : Math.max(0, next.row.start - talk);
  return wishes.map((wish, n) => (n === 0 ? { ...wish, wanted: from } : { ...wish, wanted: 0 }));
}

function headsUpWishes(span: Voiced, work: PlacedWork): LineWish[] {
  if (headSeconds(span.plan, "headsUpSeconds") <= 0) return [];
  const window = workWindow(span.plan, work, "heads-up");
  return span.calls().map((text) => ({
    ...wishOf(span, work, { kind: "heads-up", text }, window),
    wanted: window.from,
  }));
}

/** A line that begins at its own moment. Live fields may change its length with the moment, so both are settled in turn. */
function momentWish(span: Voiced, work: PlacedWork, line: Line, moment: LineMoment): LineWish {
  const { start, end } = work.row;
  const free = wishOf(span, work, line, { from: start, to: end });
  const first = momentWindow(span.plan, work, moment, free.say(momentWindow(span.plan, work, moment, 0).from).seconds);
  const seconds = free.say(first.from).seconds;
  const window = momentWindow(span.plan, work, moment, seconds);
  return { ...free, seconds, window, wanted: window.from, isMoment: true };
}

interface Line {
  readonly kind: SpokenKind;
  readonly text: string;
}

function wishOf(span: Voiced, placed: PlacedWork, line: Line, window: Window): LineWish {
  const { plan, counter } = span;
  const { item, row } = placed;
  const total = span.classLeft ?? 0;
  const next = following(span, placed);
  const secondsOf = (text: string) => Math.max(SHORTEST, spokenSeconds(plan, text, counter.ofText));
  if (!line.text.includes("{")) {
    const said = { text: line.text, seconds: secondsOf(line.text) };
    return { item: item.id, kind: line.kind, text: line.text, window, seconds: said.seconds, say: () => said };
  }
  const say = (at: number) => {
    const text = fillLiveFields(line.text, { plan, item, next, row, total, at });
    return { text, seconds: secondsOf(text) };
  };
  const seconds = longest(line.text, { window, say, end: row.end, total, counter });
  return { item: item.id, kind: line.kind, text: line.text, window, seconds: seconds, say };
}

/** Live fields whose words change with time. */
const TIMED = /\{(seconds|minutes)-left\}/;

interface Saying {
  readonly window: Window;
  readonly say: LineWish["say"];
  /** When the item's work ends, and the length of the class. */
  readonly end: number;
  readonly total: number;
  readonly counter: SyllableCounter;
}

/** The longest a line can take in its window: "twenty-five seconds" is longer to say than "twenty seconds". */
function longest(text: string, { window, say, end, total, counter }: Saying): number {
  const most = say(window.from).seconds;
  if (!TIMED.test(text)) return most;
  // `say` is slow, so only the moment with the longest words is tried. Most seconds are said like the one before.
  const [hasSeconds, hasMinutes] = [text.includes("{seconds-left}"), text.includes("{minutes-left}")];
  let longer = { at: window.from, syllables: -1 };
  let last = "";
  for (let at = window.from + 1; at <= window.to; at++) {
    const seconds = hasSeconds ? amountWords(roundSeconds(end - at)) : "";
    const words = hasMinutes ? `${seconds} ${amountWords(roundMinutes(total - at))}` : seconds;
    if (words === last) continue;
    last = words;
    const syllables = counter.ofText(words);
    if (syllables > longer.syllables) longer = { at, syllables };
  }
  return Math.max(most, say(longer.at).seconds);
}

function tracked(spans: readonly PlacedSpan[], total: number): CueTrack {
  const talkSeconds = spans.reduce((sum, span) => sum + span.talkSeconds, 0);
  return {
    cues: ([] as Cue[]).concat(...spans.map((span) => span.cues)),
    dropped: ([] as DroppedLine[]).concat(...spans.map((span) => span.dropped)),
    talkSeconds: tenth(talkSeconds),
    talkShare: total > 0 ? Math.round((1000 * talkSeconds) / total) / 1000 : 0,
  };
}

/**
 * What the plan itself calls before a change: the full call first, then shorter ones for when there is less time. Braces
 * in names are doubled, so that nothing in a name is read as a live field.
 */
export function headsUpTexts(plan: Plan, item: MoveItem): string[] {
  const following = plan.items.slice(plan.items.findIndex((other) => other.id === item.id) + 1);
  return callsOf(
    plan,
    item,
    following.find((other) => other.kind !== "heading"),
  );
}

/** `called`: the next item that takes time. */
function callsOf(plan: Plan, item: MoveItem, called: PlanItem | undefined): string[] {
  if (!called) return ["Coming up: the close."];
  if (called.kind === "pause") return [`Coming up: a pause of ${countWord(Math.round(called.seconds))} seconds.`];
  if (called.kind !== "move") return [];
  const name = `Coming up: ${escapeScriptText(moveName(plan, called))}.`;
  const { acts, on } = changeCall(plan, item, called);
  const whole = `${name} ${escapeScriptText(acts)}`;
  return on === "" ? [whole, name] : [`${whole} ${escapeScriptText(on)}`, whole, name];
}
