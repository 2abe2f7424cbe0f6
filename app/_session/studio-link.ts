/**
 * Keeps a page's studio (library, machines, standards) the same as the server's: hears the mark of the one that counts now,
 * fetches it when the page holds another, and tries again for as long as the network fails.
 */
import { send } from "#app/_parts/send.ts";
import type { PlanStudio } from "#server/studio-data/plan-studio.ts";

interface StudioAsking {
  /** "refused": this person may not have it. Rejects when the server cannot be reached. */
  ask(): Promise<PlanStudio | "refused">;
  take(studio: PlanStudio): void;
  /** Runs `run` once after `ms`. Returns the way to cancel it. */
  later(run: () => void, ms: number): () => void;
}

const FIRST_WAIT_MS = 500;
const LONGEST_WAIT_MS = 30_000;

export class StudioLink {
  private held: string;
  private wanted: string;
  private asking = false;
  private failures = 0;
  private cancelWait: (() => void) | null = null;
  private ended = false;
  private readonly with: StudioAsking;

  /** `mark`: of the studio that the page was made with. */
  constructor(mark: string, asking: StudioAsking) {
    this.held = mark;
    this.wanted = mark;
    this.with = asking;
  }

  /** The server says which studio counts now. */
  hear(mark: string): void {
    this.wanted = mark;
    this.failures = 0;
    this.cancelWait?.();
    this.cancelWait = null;
    if (!this.asking && this.wanted !== this.held) void this.fetch();
  }

  end(): void {
    this.ended = true;
    this.cancelWait?.();
  }

  private async fetch(): Promise<void> {
    this.asking = true;
    const wanted = this.wanted;
    const answer = await this.with.ask().catch(() => null);
    this.asking = false;
    if (this.ended) return;
    if (answer === "refused") return;
    if (answer === null) return this.waitAndTry();
    this.held = answer.mark;
    this.with.take(answer);
    // The answer is at least as new as the mark it was fetched for. Only a mark that came meanwhile can differ from it.
    if (this.wanted === wanted) this.wanted = answer.mark;
    else if (this.wanted !== this.held) void this.fetch();
  }

  private waitAndTry(): void {
    const ms = Math.min(FIRST_WAIT_MS * 2 ** this.failures++, LONGEST_WAIT_MS);
    this.cancelWait = this.with.later(() => {
      this.cancelWait = null;
      void this.fetch();
    }, ms);
  }
}

/** Rejects when the server cannot be reached or cannot answer just now. */
export async function fetchStudio(planId: string): Promise<PlanStudio | "refused"> {
  const sent = await send<PlanStudio>("GET", `/api/plans/${planId}/studio`);
  if (sent.ok) return sent.value;
  if (sent.status === 0 || sent.status >= 500) throw new Error(sent.message);
  return "refused";
}
