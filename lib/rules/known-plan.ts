/** What is worked out about a plan before any rule runs. */

import type { Balance } from "#lib/balance/balance.ts";
import type { KeptClock } from "#lib/clock/kept-clock.ts";
import type { SpanOnClock } from "#lib/cues/on-clock.ts";
import type { PlanParts } from "#lib/plan/parts.ts";
import type { Standards } from "#lib/plan/schema.ts";

export interface KnownParts extends PlanParts, KeptClock {
  readonly standards: Standards | undefined;
  readonly balance: Balance;
  /** One more than there are moves; null when the times are damaged and no cue can be placed. */
  readonly spans: readonly SpanOnClock[] | null;
}
