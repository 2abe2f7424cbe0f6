/**
 * A page works out its own findings, and so does the server, which signs by its own. The server only names what it read and
 * what it found; a page that found the same asks for nothing. One that found something else of the very same plan (an
 * older page, a defect) fetches what the server found.
 */
import * as z from "zod/mini";
import { Marker } from "#lib/analysis/marks.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { findingSchema } from "#lib/protocol/finding.ts";
import type { Finding } from "#lib/rules/define/types.ts";

/** The server's findings of the plan of this name. */
export interface Served {
  readonly plan: string;
  readonly findings: readonly Finding[];
}

interface Names {
  readonly plan: string;
  readonly findings: string;
}

export interface OpinionAsking {
  /** What this page holds and found, as of now. */
  own(): { readonly plan: Plan; readonly findings: readonly Finding[] };
  /** The server's findings and the name of the plan it found them in; null when it cannot say. */
  ask(): Promise<Served | null>;
  take(served: Served): void;
  /** Runs `run` once after `ms`; gives what cancels it. */
  later(run: () => void, ms: number): () => void;
}

/** So that what came over the socket is drawn, and typing has paused, before anything is compared. */
const COMPARE_AFTER_MS = 500;

export class SecondOpinion {
  private readonly with: OpinionAsking;
  private readonly marker = new Marker();
  private cancel: (() => void) | null = null;
  /** Of which plan the server's findings were fetched: once is enough. */
  private fetched: string | null = null;
  private ended = false;

  constructor(asking: OpinionAsking) {
    this.with = asking;
  }

  /** The server has checked. What it said before is out of date. */
  hear(names: Names): void {
    this.cancel?.();
    this.cancel = this.with.later(() => this.compare(names), COMPARE_AFTER_MS);
  }

  end(): void {
    this.ended = true;
    this.cancel?.();
  }

  /** A page that holds another plan, if only by a letter, hears of that one later. */
  private compare(names: Names): void {
    this.cancel = null;
    const { plan, findings } = this.with.own();
    if (names.plan === this.fetched || names.plan !== this.marker.plan(plan)) return;
    if (names.findings !== this.marker.findings(findings)) void this.fetch();
  }

  private async fetch(): Promise<void> {
    const served = await this.with.ask().catch(() => null);
    if (served === null || this.ended) return;
    this.fetched = served.plan;
    this.with.take(served);
  }
}

const servedSchema = z.object({ plan: z.string(), findings: z.array(findingSchema) });

export async function fetchFindings(planId: string): Promise<Served | null> {
  const answer = await fetch(`/api/plans/${planId}/findings`);
  const read = answer.ok ? servedSchema.safeParse(await answer.json()) : undefined;
  return read?.success ? (read.data as Served) : null;
}
