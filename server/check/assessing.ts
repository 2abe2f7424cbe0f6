/**
 * Assessments that people wait for, one at a time. Several of one plan that have not begun become one, of what was read
 * last: asking often takes no more of the machine than asking once, and no other plan waits longer for it.
 */
import type { Assessment, PlanReading } from "#server/context/assessment.ts";
import type { CheckRunner } from "./runner.ts";

interface Waiting {
  reading: PlanReading;
  readonly heard: ((found: Assessment | null) => void)[];
}

export class Assessing {
  private readonly runner: Pick<CheckRunner, "assess">;
  private readonly failed: (planId: string, cause: unknown) => void;
  private readonly waiting = new Map<string, Waiting>();
  private busy = false;

  constructor(runner: Pick<CheckRunner, "assess">, failed: (planId: string, cause: unknown) => void) {
    this.runner = runner;
    this.failed = failed;
  }

  /** Of this reading or of a later one of the same plan. Null for one that cannot be evaluated. */
  add(planId: string, reading: PlanReading): Promise<Assessment | null> {
    const found = this.waiting.get(planId) ?? { reading, heard: [] };
    found.reading = reading;
    this.waiting.set(planId, found);
    return new Promise((resolve) => {
      found.heard.push(resolve);
      void this.work();
    });
  }

  private async work(): Promise<void> {
    if (this.busy) return;
    this.busy = true;
    for (const [planId, { reading, heard }] of this.waiting) {
      this.waiting.delete(planId);
      const found = await this.assess(planId, reading);
      for (const hear of heard) hear(found);
    }
    this.busy = false;
  }

  private async assess(planId: string, reading: PlanReading): Promise<Assessment | null> {
    try {
      return await this.runner.assess(reading);
    } catch (cause) {
      this.failed(planId, cause);
      return null;
    }
  }
}
