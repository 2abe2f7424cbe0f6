/**
 * What really happened in a class, step by step, next to what was planned. It is worked out from the floor's events, so
 * the seconds of all rows add up to the time the class took.
 */

import type { Card } from "#lib/card/schema.ts";
import { SAME_MOMENT, tenth } from "#lib/numbers/round.ts";
import { type ClassLog, type ClassLogRow, MOST_UNDONE } from "./class-log-schema.ts";
import { advanced, type ClockAnchor, type FloorLog } from "./log.ts";
import { type FloorNow, type FloorStage, floorNow, floorStages, standingLog, undoneTouches } from "./now.ts";
import { type FloorStep, floorSteps } from "./steps.ts";

/** A hold within a step's first seconds means that people were not ready (common practice, no source). */
const JUST_BEGUN_SECONDS = 3;

export interface LogOf {
  readonly sessionId: string;
  readonly kind: ClassLog["kind"];
  /** The log's clock and the wall clock, read at the same moment, to date the start of the class. */
  readonly clock: ClockAnchor;
}

/** The log of a class up to `until`, ms on the clock of the events; null before the class began. */
export function classLogUntil(card: Card, whole: FloorLog, until: number, of: LogOf): ClassLog | null {
  const happened = whole.filter((event) => event.at <= until);
  // An undone touch takes no seconds: its time belongs to what was really going on.
  const log = standingLog(card, happened);
  const stages = floorStages(card, log);
  const startedAt = stages.at(-1)?.anchor.startedAt ?? null;
  if (startedAt === null) return null;
  const spent = new Map<string, Spent>();
  stages.forEach((stage, i) => {
    spend(spent, stage, stages[i + 1]?.event.at ?? until);
  });
  const rows = rowsOf(card, floorNow(card, log), spent);
  const last = stages.at(-1) as FloorStage;
  const position = advanced(last.anchor, until, last.now.clock.total).position;
  return {
    format: "springline.class-log/1",
    sessionId: of.sessionId,
    kind: of.kind,
    edition: { planId: card.edition.planId, number: card.edition.number, hash: card.edition.hash },
    startedAt: new Date(of.clock.wall - (of.clock.mono - startedAt)).toISOString(),
    elapsed: tenth(rows.reduce((sum, row) => sum + row.took + row.held, 0)),
    whole: position >= last.now.clock.total - SAME_MOMENT,
    rows,
    ...undoneOf(card, happened, startedAt),
  };
}

/** The undone touches; no key when there are none. */
function undoneOf(card: Card, log: FloorLog, startedAt: number): Pick<ClassLog, "undone"> {
  const undone = undoneTouches(card, log).map(({ touch, undoneAt }) => ({
    act: touch.type as NonNullable<ClassLog["undone"]>[number]["act"], // only touches can be undone
    at: tenth((touch.at - startedAt) / 1000),
    after: tenth((undoneAt - touch.at) / 1000),
  }));
  return undone.length > 0 ? { undone: undone.slice(0, MOST_UNDONE) } : {};
}

interface Spent {
  readonly took: number;
  readonly held: number;
  /** When the last early hold was made, in seconds after the step's start, and how long all early holds lasted. */
  readonly early?: { readonly after: number; readonly held: number };
}
const NOTHING: Spent = { took: 0, held: 0 };
const keyOf = ({ phase, item }: Pick<FloorStep, "phase" | "item">): string => `${phase} ${item ?? ""}`;

/** Adds the time between an event and the next one to the steps it was spent in. */
function spend(spent: Map<string, Spent>, { anchor, now }: FloorStage, until: number): void {
  if (anchor.startedAt === null || anchor.ended) return;
  const of = (step: FloorStep) => spent.get(keyOf(step)) ?? NOTHING;
  if (anchor.held) {
    const here = now.steps.find((step) => anchor.position < step.to - SAME_MOMENT);
    if (here) spent.set(keyOf(here), heldMore(of(here), anchor.position - here.from, Math.max(0, until - anchor.at)));
    return;
  }
  const to = advanced(anchor, until, now.clock.total).position;
  for (const step of now.steps) {
    const overlap = Math.min(to, step.to) - Math.max(anchor.position, step.from);
    if (overlap > 0) spent.set(keyOf(step), { ...of(step), took: of(step).took + overlap });
  }
}

/** `after`: seconds into the step when it was held, for `ms`. */
function heldMore(was: Spent, after: number, ms: number): Spent {
  const held = was.held + ms / 1000;
  if (after > JUST_BEGUN_SECONDS) return { ...was, held };
  const early = was.early ?? { after: 0, held: 0 };
  return { ...was, held, early: { after: Math.max(early.after, after), held: early.held + ms / 1000 } };
}

/** Every step of the signed plan and, in their places, those that a re-timing added. */
function rowsOf(card: Card, now: FloorNow, spent: ReadonlyMap<string, Spent>): ClassLogRow[] {
  const planned = new Map(floorSteps(card).map((step) => [keyOf(step), step]));
  const given = new Map(now.steps.map((step) => [keyOf(step), step]));
  const keys: Pick<FloorStep, "phase" | "item">[] = [
    { phase: "opening", item: null },
    ...card.plan.items.flatMap(({ id, kind }): Pick<FloorStep, "phase" | "item">[] => [
      { phase: "change", item: id },
      { phase: kind === "pause" ? "pause" : "work", item: id },
    ]),
    { phase: "closing", item: null },
  ];
  return keys.flatMap((key): ClassLogRow[] => {
    const [was, is, went] = [planned.get(keyOf(key)), given.get(keyOf(key)), spent.get(keyOf(key))];
    if (!was && !is && !went) return [];
    const times = { planned: long(was), given: long(is), took: tenth(went?.took ?? 0), held: tenth(went?.held ?? 0) };
    return [{ ...key, ...times, ...lateStart(key.phase, went) }];
  });
}

/** Only for work: a change or a pause that is held is simply longer. */
function lateStart(phase: FloorStep["phase"], went: Spent | undefined): Pick<ClassLogRow, "lateStart"> {
  if (phase !== "work" || !went?.early) return {};
  return { lateStart: tenth(went.early.after + went.early.held) };
}

const long = (step: FloorStep | undefined): number => (step ? tenth(step.to - step.from) : 0);
