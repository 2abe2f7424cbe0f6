/**
 * What really happened in a class, step by step beside what was planned: worked out of the floor's own events, so that the
 * seconds of all rows add up to the time the class took.
 */
import type { Card } from "#lib/card/schema.ts";
import type { ClassLog, ClassLogRow } from "./class-log-schema.ts";
import { type ClockAnchor, type FloorLog, moved } from "./log.ts";
import { type FloorNow, type FloorStage, floorNow, floorStages } from "./now.ts";
import { type FloorStep, floorSteps } from "./steps.ts";

const ALMOST = 1e-6;

export interface LogOf {
  readonly sessionId: string;
  readonly kind: ClassLog["kind"];
  /** The log's clock and the wall clock, read at the same moment: tells when the class began. */
  readonly clock: ClockAnchor;
}

/** The log of a class as it stands at `until`, ms on the clock of the events; null before it began. */
export function classLog(card: Card, log: FloorLog, until: number, of: LogOf): ClassLog | null {
  const stages = floorStages(card, log).filter(({ event }) => event.at <= until);
  const startedAt = stages.at(-1)?.anchor.startedAt ?? null;
  if (startedAt === null) return null;
  const spent = new Map<string, Spent>();
  stages.forEach((stage, i) => {
    spend(spent, stage, stages[i + 1]?.event.at ?? until);
  });
  const rows = rowsOf(card, floorNow(card, log), spent);
  const last = stages.at(-1) as FloorStage;
  const position = moved(last.anchor, until, last.now.clock.total).position;
  return {
    format: "springline.class-log/1",
    sessionId: of.sessionId,
    kind: of.kind,
    edition: { planId: card.edition.planId, number: card.edition.number, hash: card.edition.hash },
    startedAt: new Date(of.clock.wall - (of.clock.mono - startedAt)).toISOString(),
    elapsed: tenth(rows.reduce((sum, row) => sum + row.took + row.held, 0)),
    whole: position >= last.now.clock.total - ALMOST,
    rows,
  };
}

interface Spent {
  took: number;
  held: number;
}
const keyOf = ({ phase, item }: Pick<FloorStep, "phase" | "item">): string => `${phase} ${item ?? ""}`;

/** Adds what went by between an event and the next one to the steps it went into. */
function spend(spent: Map<string, Spent>, { anchor, now }: FloorStage, until: number): void {
  if (anchor.startedAt === null || anchor.ended) return;
  const add = (step: FloorStep, took: number, held: number) => {
    const was = spent.get(keyOf(step)) ?? { took: 0, held: 0 };
    spent.set(keyOf(step), { took: was.took + took, held: was.held + held });
  };
  if (anchor.held) {
    const here = now.steps.find((step) => anchor.position < step.to - ALMOST);
    if (here) add(here, 0, Math.max(0, until - anchor.at) / 1000);
    return;
  }
  const to = moved(anchor, until, now.clock.total).position;
  for (const step of now.steps) {
    const overlap = Math.min(to, step.to) - Math.max(anchor.position, step.from);
    if (overlap > 0) add(step, overlap, 0);
  }
}

/** Every step of the signed class and, in their places, those that a re-timing brought about. */
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
    return [
      { ...key, planned: long(was), given: long(is), took: tenth(went?.took ?? 0), held: tenth(went?.held ?? 0) },
    ];
  });
}

const long = (step: FloorStep | undefined): number => (step ? tenth(step.to - step.from) : 0);
const tenth = (x: number): number => Math.round(x * 10) / 10;
