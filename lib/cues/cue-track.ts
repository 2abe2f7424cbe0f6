/**
 * The cue track of a class: one voice from the first set-up to the last count, every line in its window (`windows.ts`),
 * the choice of what is said exact (`one-voice.ts`), or by how many seconds it does not fit.
 */

import { classClock } from "#lib/clock/clock.ts";
import { areSame, Kept, KeptEach } from "#lib/memo/kept.ts";
import { tenth } from "#lib/numbers/round.ts";
import { countWord, moveName } from "#lib/plan/format.ts";
import { headSeconds } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { escapeScriptText } from "#lib/plan/script-text.ts";
import { SyllableCounter } from "#lib/talk/syllables.ts";
import { spokenSeconds } from "#lib/talk/talk.ts";
import { changeCall } from "./changes.ts";
import { fillLiveFields } from "./live-fields.ts";
import { isOverfull, type LineWish, type PlacedSpan, placeSpan, spokenLines } from "./place-span.ts";
import type { Spoken } from "./said-order.ts";
import { planOfSpan, type SpanPlace, type SpanSource, spanOf, spanPlaces, spanReads, type TalkSpan } from "./span.ts";
import type { Cue, CueTrack, DroppedLine, SpokenKind } from "./types.ts";
import { countInSeconds, type PlacedWork, setupWindow, type Window, workWindow } from "./windows.ts";

/** A line without words, dots only, still takes a moment. Seconds. */
const SHORTEST = 0.5;

/** Places every spoken line of a plan, or says by how many seconds it does not fit. Pure; never overlaps. */
export const cueTrack = (plan: Plan): CueTrack => new CueTracker().track(sourceOf(plan));

/** What one voice is asked for each span of a plan: its lines, with the whole heads-up first, then with shorter ones. */
export function voiceProblems(plan: Plan): Spoken[][][] {
  const counter = new SyllableCounter();
  return spanPlaces(sourceOf(plan)).map((stretch) =>
    triesOf({ ...spanOf(stretch), plan: planOfSpan(stretch), counter }).map((wishes) => spokenLines(wishes).lines),
  );
}

const sourceOf = (plan: Plan): SpanSource => ({
  frame: { ...plan, items: [] },
  times: plan,
  plan,
  clock: classClock(plan),
});

/** Cue tracks of one plan as it is written: a span in which nothing changed stays as it was placed. */
export class CueTracker {
  private readonly counter: SyllableCounter;
  private readonly kept = new KeptEach<KeptSpan>();
  private readonly whole = new Kept<CueTrack>();

  constructor(counter: SyllableCounter = new SyllableCounter()) {
    this.counter = counter;
  }

  /** One more than there are moves: span n is said before move n is over and holds its set-up. Seconds of the class. */
  spans(source: SpanSource): PlacedSpan[] {
    this.kept.round();
    return spanPlaces(source).map(
      (stretch) => this.kept.get(stretch.key, spanReads(stretch), (was) => this.placed(stretch, was)).onClock,
    );
  }

  /** Where only what the span does not read has changed, or where it begins, its lines stay where they are in it. */
  private placed(stretch: SpanPlace, was: KeptSpan | undefined): KeptSpan {
    const span = spanOf(stretch);
    const { reads, origin } = span;
    const placed =
      was && areSame(was.reads, reads)
        ? was.placed
        : placedSpan({ ...span, plan: planOfSpan(stretch), counter: this.counter });
    const isWhereItWas = placed === was?.placed && origin === was.origin;
    return { reads, origin, placed, onClock: isWhereItWas ? was.onClock : movedTo(placed, origin) };
  }

  track(source: SpanSource, spans: readonly PlacedSpan[] = this.spans(source)): CueTrack {
    const { total } = source.clock;
    return this.whole.get([total, ...spans], () => tracked(spans, total));
  }
}

/** A span as it was placed, in its own seconds and on the clock of the class. */
interface KeptSpan extends Pick<TalkSpan, "reads" | "origin"> {
  readonly placed: PlacedSpan;
  readonly onClock: PlacedSpan;
}

/** A span with its plan, and the counter of whoever has it placed. */
interface Voiced extends TalkSpan {
  readonly plan: Plan;
  readonly counter: SyllableCounter;
}

/** The lines of a span, once for each heads-up it may have. */
function triesOf(span: Voiced): LineWish[][] {
  const { work, next } = span;
  const others = [...(work ? workWishes(span, work) : []), ...(next ? setupWishes(span, next) : [])];
  const calls = work ? headsUpWishes(span, work) : [];
  return calls.length === 0 ? [others] : calls.map((call) => [...others, call]);
}

/** The best placing of a span: with the whole heads-up, or with a shorter one where that leaves more to be said. */
function placedSpan(span: Voiced): PlacedSpan {
  const [whole, ...shorter] = triesOf(span);
  // Where the whole call cannot be all and a shorter one is, there is nothing to weigh, and the long search is spared.
  const early = isOverfull(whole ?? []) ? shorter.map(placeSpan) : undefined;
  const complete = early?.find((placed) => placed.lost === 0);
  if (complete) return complete;
  const tries = [placeSpan(whole ?? []), ...(early ?? shorter.map(placeSpan))];
  return tries.reduce((best, other) => (other.lost < best.lost ? other : best));
}

/** The move that follows a placed one of the span. */
const following = (span: Voiced, placed: PlacedWork): MoveItem | undefined =>
  placed === span.work ? span.next?.item : span.after;

function workWishes(span: Voiced, work: PlacedWork): LineWish[] {
  const { plan } = span;
  const wishes = span.lines.map((line) => wishOf(span, work, line, workWindow(plan, work, line.kind)));
  const count = countInSeconds(plan, work.row);
  if (count < 1) return wishes;
  const text = Array.from({ length: count }, (_, n) => countWord(count - n)).join(", ");
  const said = { text, seconds: count };
  const window = workWindow(plan, work, "count-in");
  return [...wishes, { item: work.item.id, kind: "count-in", text, window, seconds: count, say: () => said }];
}

function setupWishes(span: Voiced, next: PlacedWork): LineWish[] {
  const window = setupWindow(span.plan, span.work, next);
  const wishes = span.setupLines.map((line) => wishOf(span, next, line, window));
  // Into the change, all together; before the first move there is no change: they end as it starts.
  const talk = wishes.reduce((sum, wish) => sum + wish.seconds, 0);
  const from = span.work ? next.row.transitionFrom : Math.max(0, next.row.start - talk);
  return wishes.map((wish, n) => (n === 0 ? { ...wish, wanted: from } : { ...wish, wanted: 0 }));
}

function headsUpWishes(span: Voiced, work: PlacedWork): LineWish[] {
  if (headSeconds(span.plan, "headsUpSeconds") <= 0) return [];
  const window = workWindow(span.plan, work, "heads-up");
  return callsOf(span.plan, work.item, span.called).map((text) => ({
    ...wishOf(span, work, { kind: "heads-up", text }, window),
    wanted: window.from,
  }));
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

/** Fields that say other words as time goes by. */
const TIMED = /\{(seconds|minutes)-left\}/;

interface Saying {
  readonly window: Window;
  readonly say: LineWish["say"];
  /** When the work of its item ends, and the class. */
  readonly end: number;
  readonly total: number;
  readonly counter: SyllableCounter;
}

/** The longest a line can take in its window: "twenty-five seconds" is longer to say than "twenty seconds". */
function longest(text: string, { window, say, end, total, counter }: Saying): number {
  const most = say(window.from).seconds;
  if (!TIMED.test(text)) return most;
  // Of every minute of the class the moment with the longest number of seconds is enough: say() is dear, numbers are not.
  const tries = new Map<number, { at: number; syllables: number }>();
  for (let at = window.from + 1; at <= window.to; at++) {
    const minutes = Math.round((total - at) / 60);
    const syllables = counter.ofNumber(Math.max(0, Math.round(end - at)));
    if (syllables > (tries.get(minutes)?.syllables ?? -1)) tries.set(minutes, { at, syllables });
  }
  return [...tries.values()].reduce((longer, { at }) => Math.max(longer, say(at).seconds), most);
}

/** A span that begins `origin` seconds into the class, on the clock of the class. */
function movedTo(span: PlacedSpan, origin: number): PlacedSpan {
  return {
    ...span,
    cues: span.cues.map((cue) => ({ ...cue, from: tenth(origin + cue.from), to: tenth(origin + cue.to) })),
    dropped: span.dropped.map((line) => ({ ...line, shortBy: tenth(line.shortBy) })),
  };
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
 * What the plan itself says before a change, the full call first, then the shorter ones for when there is less time.
 * The braces of names are doubled, so that nothing in a name is taken for a live field.
 */
export function headsUpTexts(plan: Plan, item: MoveItem): string[] {
  const following = plan.items.slice(plan.items.findIndex((other) => other.id === item.id) + 1);
  return callsOf(
    plan,
    item,
    following.find((other) => other.kind !== "heading"),
  );
}

/** `called`: the first item after it that takes time. */
function callsOf(plan: Plan, item: MoveItem, called: PlanItem | undefined): string[] {
  if (!called) return ["Coming up: the close."];
  if (called.kind === "pause") return [`Coming up: a pause of ${countWord(Math.round(called.seconds))} seconds.`];
  if (called.kind !== "move") return [];
  const name = `Coming up: ${escapeScriptText(moveName(plan, called))}.`;
  const { acts, on } = changeCall(plan, item, called);
  const whole = `${name} ${escapeScriptText(acts)}`;
  return on === "" ? [whole, name] : [`${whole} ${escapeScriptText(on)}`, whole, name];
}
