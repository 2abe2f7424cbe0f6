/**
 * Page and server both work out the findings, and a plan is signed by the server's. The server sends the page hashes of the
 * plan it read and of what it found. A page that found something else in that same plan (it is older, or has a defect)
 * fetches the server's findings.
 */
import type { Marker } from "#lib/analysis/marks.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";

/** The server's findings, and the hash of the plan they are of. */
export interface Served {
  readonly plan: string;
  readonly findings: readonly Finding[];
  /** Whether they are of this plan. */
  isOf(plan: Plan): boolean;
}

interface Names {
  readonly plan: string;
  readonly findings: string;
}

interface OpinionAsking {
  /** The plan and findings of this page as they are now. */
  own(): { readonly plan: Plan; readonly findings: readonly Finding[] };
  /** Hashes plans and findings. Comes once this page has checked with all rules; rejects where there is no network. */
  marker(): Promise<Pick<Marker, "plan" | "findings">>;
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
  private cancel: (() => void) | null = null;
  /** The plan whose findings were fetched last. They are fetched once. */
  private fetched: string | null = null;
  private newest: Names | null = null;
  private ended = false;

  constructor(asking: OpinionAsking) {
    this.with = asking;
  }

  /** The server has checked the plan again; earlier answers no longer count. */
  hear(names: Names): void {
    this.newest = names;
    this.cancel?.();
    this.cancel = this.with.later(() => void this.compare(names), COMPARE_AFTER_MS);
  }

  end(): void {
    this.ended = true;
    this.cancel?.();
  }

  /** Only where page and server looked at the very same plan. For a plan that has changed since, the server answers later. */
  private async compare(names: Names): Promise<void> {
    this.cancel = null;
    const marker = await this.with.marker().catch(() => null);
    if (marker === null || this.ended || names !== this.newest) return;
    const { plan, findings } = this.with.own();
    if (names.plan === this.fetched || names.plan !== marker.plan(plan)) return;
    if (names.findings !== marker.findings(findings)) await this.fetch();
  }

  private async fetch(): Promise<void> {
    const served = await this.with.ask().catch(() => null);
    if (served === null || this.ended) return;
    this.fetched = served.plan;
    this.with.take(served);
  }
}
