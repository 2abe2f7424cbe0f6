/**
 * The floor with no class: the plan's clock runs, and the coach taps when a line is really said or a set-up really done.
 * There is one gesture; what it means depends on where the class is. A change waits at its end until it is tapped.
 * `now.ts` knows where the class is, as for a real class; taps do not move it.
 */

import type { Card } from "#lib/card/schema.ts";
import type { Cue, SpokenKind } from "#lib/cues/types.ts";
import { SAME_MOMENT } from "#lib/numbers/round.ts";
import { actEvent } from "./acts.ts";
import { advanced, type ClockAnchor, type FloorEvent, type FloorLog, rebaseLog, sleptLog } from "./log.ts";
import { floorStages, positionAt } from "./now.ts";
import type { FloorStep } from "./steps.ts";

/** A line to be said, identified during a rehearsal by its index in the list of beats. */
export interface Beat {
  readonly item: string;
  readonly kind: SpokenKind;
  readonly text: string;
  /** Seconds of the plan at which the line begins and ends on the cue track. */
  readonly from: number;
  readonly to: number;
}
interface Tap {
  /** ms on the clock of the log. */
  readonly at: number;
  readonly beat: number;
  /** Seconds that the line took; null when its start is not known. */
  readonly seconds: number | null;
}
export interface Rehearsing {
  readonly log: FloorLog;
  readonly taps: readonly Tap[];
}

/** What the next tap will mean. */
export type TapMeaning =
  | { readonly kind: "said"; readonly beat: number; readonly seconds: number }
  /** Said before its time: counted as said, but not measured. */
  | { readonly kind: "said-early"; readonly beat: number }
  | { readonly kind: "set-up" }
  | { readonly kind: "nothing" };

/** A change waits this long before its end, so that it is still the current step. Seconds. */
const WAIT = 0.001;
/** Lines closer than this in the plan are said in one go: the next begins when the last is tapped. Seconds. */
const IN_ONE_GO = 1.5;

/** The lines of a class in the order they are said. Without the count-ins, whose length is fixed. */
export function beatsOf(card: Pick<Card, "cues">): readonly Beat[] {
  return card.cues
    .filter(({ kind }) => kind !== "count-in")
    .map(beatOf)
    .sort((a, b) => a.from - b.from);
}
const beatOf = ({ item, kind, text, from, to }: Cue): Beat => ({ item, kind, text, from, to });

/** The rehearsal at `at`: a change that reached its end without a tap is held from that moment. */
export function advancedTo(card: Card, was: Rehearsing, at: number): Rehearsing {
  const stage = floorStages(card, was.log).at(-1);
  if (!stage || stage.anchor.startedAt === null || stage.anchor.held || stage.anchor.ended) return was;
  const { position } = stage.anchor;
  const now = advanced(stage.anchor, at, stage.now.clock.total).position;
  const end = stage.now.steps.find(
    (s) => s.phase === "change" && s.to - WAIT > position - SAME_MOMENT && s.to <= now,
  )?.to;
  if (end === undefined) return was;
  const hold: FloorEvent = { type: "hold", at: stage.anchor.at + (end - WAIT - position) * 1000 };
  return { ...was, log: [...was.log, hold] };
}
/** What a tap at `at` means. `was` must have been advanced to `at`. */
export function tapMeaning(card: Card, was: Rehearsing, at: number): TapMeaning {
  const { position, startedAt, ended } = positionAt(card, was.log, at);
  if (startedAt === null || ended) return { kind: "nothing" };
  const step = stepAt(card, was.log, position);
  const n = pointer(card, was);
  const beat = beatsOf(card)[n];
  const begun = beat ? begunAt(card, was, n, at) : null;
  if (begun !== null) return { kind: "said", beat: n, seconds: spokenBetween(card, was.log, begun, at) };
  if (step?.phase === "change") return { kind: "set-up" };
  return beat && step && beat.from < step.to ? { kind: "said-early", beat: n } : { kind: "nothing" };
}

/** The rehearsal after a tap at `at`. A tap that means nothing changes nothing. */
export function afterTap(card: Card, before: Rehearsing, at: number): Rehearsing {
  const was = advancedTo(card, before, at);
  const meaning = tapMeaning(card, was, at);
  switch (meaning.kind) {
    case "said":
      return { ...was, taps: [...was.taps, { at, beat: meaning.beat, seconds: meaning.seconds }] };
    case "said-early":
      return { ...was, taps: [...was.taps, { at, beat: meaning.beat, seconds: null }] };
    case "set-up": {
      const held = positionAt(card, was.log, at).held;
      const on: FloorEvent = actEvent(card, was.log, "next", at);
      return { ...was, log: [...was.log, on, ...(held ? [{ type: "resume", at } as const] : [])] };
    }
    case "nothing":
      return was;
  }
}

/** The line being said at `at`, which a tap would mark as said; or null. */
export function beatAt(card: Card, was: Rehearsing, at: number): Beat | null {
  const meaning = tapMeaning(card, was, at);
  return meaning.kind === "said" ? (beatsOf(card)[meaning.beat] ?? null) : null;
}

const stepAt = (card: Card, log: FloorLog, position: number): FloorStep | undefined =>
  floorStages(card, log)
    .at(-1)
    ?.now.steps.find((s) => position < s.to - SAME_MOMENT);

/** The last event by which the coach moved the class: lines count on from where it led. */
function lastJump(log: FloorLog): { readonly at: number; readonly to: number } | null {
  const jump = log.findLast((event) => event.type === "next" || event.type === "back" || event.type === "seek");
  return jump && "to" in jump && jump.to !== undefined ? { at: jump.at, to: jump.to } : null;
}

/** The index of the next beat: after the last one tapped since the coach last moved the class. */
function pointer(card: Card, { log, taps }: Rehearsing): number {
  const jump = lastJump(log);
  const first = jump ? beatsOf(card).findIndex((beat) => beat.from >= jump.to - SAME_MOMENT) : 0;
  const since = jump ? taps.filter((tap) => tap.at >= jump.at) : taps;
  const start = first === -1 ? beatsOf(card).length : first;
  return since.reduce((n, tap) => Math.max(n, tap.beat + 1), start);
}

/** When beat `n` began to be said, ms; null before its time. */
function begunAt(card: Card, { log, taps }: Rehearsing, n: number, at: number): number | null {
  const beats = beatsOf(card);
  const [beat, before] = [beats[n], beats[n - 1]];
  const last = taps.at(-1);
  if (!beat) return null;
  const jump = lastJump(log);
  const came = reachedAt(card, log, beat.from, at);
  const follows = last?.beat === n - 1 && last.at >= (jump?.at ?? 0) && before && beat.from - before.to <= IN_ONE_GO;
  if (follows) return last.at;
  if (came === null) return null;
  return Math.max(came, jump?.at ?? came, last && last.at <= at ? last.at : came);
}

/** When the class first reached `position` after the coach last moved it, ms; null if it has not by `at`. */
export function reachedAt(card: Card, log: FloorLog, position: number, at: number): number | null {
  const stages = floorStages(card, log);
  const since = lastJump(log)?.at ?? Number.NEGATIVE_INFINITY;
  for (const [n, { anchor, event, now }] of stages.entries()) {
    if (event.at < since || anchor.startedAt === null) continue;
    if (anchor.position >= position - SAME_MOMENT) return event.at;
    const until = Math.min(stages[n + 1]?.event.at ?? at, at);
    const end = advanced(anchor, until, now.clock.total).position;
    if (end >= position - SAME_MOMENT) return anchor.at + Math.max(0, position - anchor.position) * 1000;
  }
  return null;
}

/** True when a change has reached its end and waits for a tap. */
const waitsAtEnd = (steps: readonly FloorStep[], position: number): boolean =>
  steps.some((s) => s.phase === "change" && Math.abs(s.to - WAIT - position) < WAIT / 2);

/** Seconds between two moments without the coach's holds. The time a change waits at its end counts. */
export function spokenBetween(card: Card, log: FloorLog, from: number, to: number): number {
  const stages = floorStages(card, log);
  const rested = stages.reduce((sum, { anchor, event, now }, n) => {
    if (!anchor.held || waitsAtEnd(now.steps, anchor.position)) return sum;
    const until = Math.min(stages[n + 1]?.event.at ?? to, to);
    return sum + Math.max(0, until - Math.max(event.at, from));
  }, 0);
  return Math.max(0, to - from - rested) / 1000;
}

/** How long a change has waited at its end, seconds; 0 when none waits. */
export function waitingSeconds(card: Card, { log }: Rehearsing, at: number): number {
  const stage = floorStages(card, log).at(-1);
  if (!stage?.anchor.held || !waitsAtEnd(stage.now.steps, stage.anchor.position)) return 0;
  return Math.max(0, at - stage.anchor.at) / 1000;
}

/** The same rehearsal on another monotonic clock: see `rebaseLog`. */
export function rebasedRehearsal({ log, taps }: Rehearsing, was: ClockAnchor, is: ClockAnchor): Rehearsing {
  const away = Math.max(0, is.wall - was.wall);
  const by = is.mono - was.mono - away;
  return { log: rebaseLog(log, was, is), taps: taps.map((tap) => ({ ...tap, at: tap.at + by })) };
}

/** The same rehearsal after the device slept: see `sleptLog`. */
export function rehearsalSlept({ log, taps }: Rehearsing, now: number, sleptMs: number): Rehearsing {
  return { log: sleptLog(log, now, sleptMs), taps: taps.map((tap) => ({ ...tap, at: tap.at - sleptMs })) };
}
