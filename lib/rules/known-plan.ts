/** What is worked out about a plan before any rule runs. */

import type { Balance } from "#lib/balance/balance.ts";
import type { ClassClock } from "#lib/clock/clock.ts";
import type { PlacedSpan } from "#lib/cues/place-span.ts";
import type { PlanParts } from "#lib/plan/parts.ts";
import type { Standards } from "#lib/plan/schema.ts";

export interface KnownPlan extends PlanParts {
  readonly standards: Standards | undefined;
  readonly clock: ClassClock;
  readonly balance: Balance;
  /** One more than there are moves; null when the times are damaged and no cue can be placed. */
  readonly spans: readonly PlacedSpan[] | null;
}
