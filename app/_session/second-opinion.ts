/**
 * Page and server both work out the findings, and a plan is signed by the server's. The server sends the page hashes of the
 * plan it read and of what it found. A page that found something else in that same plan (it is older, or has a defect)
 * fetches the server's findings.
 */
import * as z from "zod/mini";
import { send } from "#app/_parts/send.ts";
import { Marker } from "#lib/analysis/marks.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { findingSchema } from "#lib/protocol/finding.ts";
import type { Finding } from "#lib/rules/define/types.ts";

/** The server's findings, and the hash of the plan they are of. */
export interface Served {
  readonly plan: string;
  readonly findings: readonly Finding[];
}

interface Names {
  readonly plan: string;
  readonly findings: string;
}

interface OpinionAsking {
  /** The plan and findings of this page as they are now. */
  own(): { readonly plan: Plan; readonly findings: readonly Finding[] };
  /** Null when the server cannot say. */
  ask(): Promise<Served | null>;
  take(served: Served): void;
  /** Runs `run` once after `ms`. Returns the way to cancel it. */
  later(run: () => void, ms: number): () => void;
}

/** Until then what came over the socket is drawn, and typing has paused. */
const COMPARE_AFTER_MS = 500;

export class SecondOpinion {
  private readonly with: OpinionAsking;
  private readonly marker = new Marker();
  private cancel: (() => void) | null = null;
  /** The plan whose findings were fetched last. They are fetched once. */
  private fetched: string | null = null;
  private ended = false;

  constructor(asking: OpinionAsking) {
    this.with = asking;
  }

  /** The server has checked the plan again; earlier answers no longer count. */
  hear(names: Names): void {
    this.cancel?.();
    this.cancel = this.with.later(() => this.compare(names), COMPARE_AFTER_MS);
  }

  end(): void {
    this.ended = true;
    this.cancel?.();
  }

  /** Only where page and server looked at the very same plan. For a plan that has changed since, the server answers later. */
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
  const sent = await send("GET", `/api/plans/${planId}/findings`, undefined, { reads: servedSchema });
  return sent.ok ? (sent.value as Served) : null;
}
