/**
 * Logs of classes that the demo studio might have taught. How long its people need for a change is invented; what the coach
 * presses follows from it, and what the studio learns is worked out from the logs as for any class.
 */
import { listClassLogs } from "#db/repos/class-log-repo.ts";
import { newestEdition, readEdition } from "#db/repos/edition-repo.ts";
import { dateOfDay, isoWeekday } from "#lib/calendar/days.ts";
import { momentOf, wallTimeAt } from "#lib/calendar/zone.ts";
import type { Card } from "#lib/card/schema.ts";
import { actEvent, endOnTimeAt, type PlainAct, retimeEvent } from "#lib/floor/acts.ts";
import { classLogUntil } from "#lib/floor/class-log.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { extension } from "#lib/floor/extension.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { seededRandom } from "#lib/order/random.ts";
import { ACTIONS } from "#lib/plan/schema.ts";
import { slowestFactor } from "#lib/transitions/slowest.ts";
import { takeLog } from "#server/class-log/take-log.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioZone } from "#server/month-facts/month-settings.ts";
import { must } from "./add-people.ts";

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
/** The two evenings on which the pattern of the month has this plan in the Loft: ISO weekdays, and the hour. */
const EVENINGS = { days: [1, 4], hour: 18 } as const;
export const CLASSES_TOLD = 9;
/** Seconds that one person of the Loft needs: slower with springs and quicker at turning than usual. */
export const LOFT_PEOPLE = {
  base: 3,
  springOn: 4.2,
  springOff: 2.6,
  carriageHome: 2,
  quarterTurn: 1.1,
  positionChange: 3.6,
  stationChange: 3,
  handleUp: 2.2,
  handleDown: 1.2,
  handlesCross: 2,
  strapOn: 6,
  strapOff: 2.5,
  gripChange: 1.5,
  sideChange: 3.4,
};
/** Seconds; a coach ignores smaller differences. */
const WORTH_A_TOUCH = 1;

/** Idempotent: a plan that has any log is left alone. */
export function addClasses(app: Springline, planId: string, roomId: string): void {
  const head = newestEdition(app.db, planId);
  const edition = head && readEdition(app.db, planId, head.number);
  if (!edition || listClassLogs(app.db, planId, edition.number).length > 0) return;
  const { card } = edition.card;
  for (const [n, startedAt] of lastEvenings(app).entries()) {
    const told = logOf(card, n === 0 ? endedOnTime(card) : byItsPeople(card, n - 1), n + 1, startedAt);
    if (told) must(takeLog(app, { kind: "device", id: "demo-tablet", roomId }, told));
  }
}

/** When the last classes began, the latest first: ms since the epoch. */
function lastEvenings(app: Springline): number[] {
  const zone = studioZone(app);
  const began: number[] = [];
  for (let day = Math.floor(wallTimeAt(app.now(), zone) / DAY_MS) - 1; began.length < CLASSES_TOLD; day--) {
    if (!EVENINGS.days.some((one) => one === isoWeekday(dateOfDay(day)))) continue;
    began.push(momentOf(day * DAY_MS + EVENINGS.hour * HOUR_MS, zone).at);
  }
  return began;
}

function logOf(card: Card, log: FloorLog, n: number, startedAt: number): ClassLog | null {
  const sessionId = `demo${String(n).padStart(28, "0")}`;
  return classLogUntil(card, log, seconds(card.clock.total * 2), {
    sessionId,
    kind: "class",
    clock: { mono: 0, wall: startedAt },
  });
}

const seconds = (s: number): number => s * 1000;

/** A class that was held for a late arrival, had one item extended, and was ended on time. */
function endedOnTime(card: Card): FloorLog {
  const middle = card.clock.total / 2;
  let log: FloorLog = [
    { type: "start", at: 0 },
    { type: "hold", at: seconds(60) },
    { type: "resume", at: seconds(95) },
  ];
  const longer = extension(card, log, 15, seconds(middle / 2));
  if (longer) log = [...log, longer.event];
  const answer = endOnTimeAt(card, log, seconds(middle));
  return answer.possible ? [...log, retimeEvent(answer, seconds(middle))] : log;
}

/**
 * A class that began late. The coach goes on as soon as people are ready, holds when they are not, and lets the clock run
 * when it is about right.
 */
function byItsPeople(card: Card, seed: number): FloorLog {
  const random = seededRandom(seed + 1);
  let log: FloorLog = [{ type: "start", at: 0 }];
  const touch = (act: PlainAct, at: number) => {
    log = [...log, actEvent(card, log, act, Math.round(seconds(at)))];
  };
  /** Seconds by which the class is behind its plan. */
  let behind = 90 + Math.round(random() * 60);
  touch("hold", 10);
  touch("resume", 10 + behind);
  for (const { transitionFrom, start, transition } of card.clock.rows) {
    const given = start - transitionFrom;
    if (given === 0 || transition.estimate === 0) continue;
    const one = ACTIONS.reduce((sum, a) => sum + (transition.actions[a] ?? 0) * LOFT_PEOPLE[a], LOFT_PEOPLE.base);
    // The sum of three random numbers resembles how people vary from evening to evening.
    const needs = one * slowestFactor(card.plan);
    const took = needs * (1 + (random() + random() + random() - 1.5) * 0.25);
    if (Math.abs(took - given) < WORTH_A_TOUCH) continue;
    const from = transitionFrom + behind;
    if (took < given) touch("next", from + took);
    else {
      touch("hold", from + given - 0.2);
      touch("resume", from + took - 0.2);
    }
    behind += took - given;
  }
  return log;
}
