/**
 * The order in which plans are checked: first those that somebody is waiting for, then those that a state depends on, then
 * those that were written in. A plan is queued once, however often it was asked for; it is checked as it is when its turn
 * comes.
 */
import type { CheckAnswer } from "#server/context/checks.ts";
import { type CheckRunner, PlaceEnded } from "./runner.ts";

const URGENCY = ["waited-for", "soon", "written"] as const;
export type Urgency = (typeof URGENCY)[number];

interface Waiting {
  urgency: Urgency;
  withFindings: boolean;
  readonly heard: ((answer: CheckAnswer | null) => void)[];
}

export interface QueueSetup {
  readonly runner: CheckRunner;
  /** Called before those who wait receive the result. */
  readonly answered: (answer: CheckAnswer) => void;
  readonly failed: (planId: string, cause: unknown) => void;
}

/** A plan whose check crashes the thread is not retried for ever. */
const MOST_TRIES = 2;

export class CheckQueue {
  private readonly setup: QueueSetup;
  /** By place and plan, in the order in which they were added. */
  private readonly waiting: Map<string, Waiting>[];
  private readonly busy = new Set<number>();

  constructor(setup: QueueSetup) {
    this.setup = setup;
    this.waiting = Array.from({ length: setup.runner.places }, () => new Map());
  }

  /** Resolves with null for a plan that cannot be checked. */
  add(planId: string, urgency: Urgency, withFindings = false): Promise<CheckAnswer | null> {
    const place = placeOf(planId, this.setup.runner.places);
    const line = this.waiting[place] as Map<string, Waiting>;
    const found = line.get(planId) ?? { urgency, withFindings, heard: [] };
    if (URGENCY.indexOf(urgency) < URGENCY.indexOf(found.urgency)) found.urgency = urgency;
    found.withFindings ||= withFindings;
    line.set(planId, found);
    return new Promise((resolve) => {
      found.heard.push(resolve);
      void this.work(place, line);
    });
  }

  /** Plans that wait or are being checked. */
  get size(): number {
    return this.waiting.reduce((sum, line) => sum + line.size, this.busy.size);
  }

  get idle(): boolean {
    return this.busy.size === 0 && this.waiting.every((line) => line.size === 0);
  }

  private async work(place: number, line: Map<string, Waiting>): Promise<void> {
    if (this.busy.has(place)) return;
    this.busy.add(place);
    for (let next = first(line); next; next = first(line)) {
      const [planId, waiting] = next;
      line.delete(planId);
      const answer = await this.check(place, planId, waiting.withFindings);
      for (const hear of waiting.heard) hear(answer);
    }
    this.busy.delete(place);
  }

  private async check(place: number, planId: string, withFindings: boolean): Promise<CheckAnswer | null> {
    for (let tries = 1; ; tries++) {
      try {
        const answer = await this.setup.runner.run(place, { planId, withFindings });
        if (answer) this.setup.answered(answer);
        return answer;
      } catch (cause) {
        if (cause instanceof PlaceEnded && tries < MOST_TRIES) continue;
        this.setup.failed(planId, cause);
        return null;
      }
    }
  }
}

function first(line: ReadonlyMap<string, Waiting>): [string, Waiting] | undefined {
  for (const urgency of URGENCY) for (const entry of line) if (entry[1].urgency === urgency) return entry;
  return undefined;
}

/** A plan is always checked in the same place. */
function placeOf(planId: string, places: number): number {
  let sum = 0;
  for (const letter of planId) sum = (sum * 31 + letter.charCodeAt(0)) >>> 0;
  return sum % places;
}
