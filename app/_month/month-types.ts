/** What the month's page is given by the server, and what its components read. */
import type { CopyState } from "#lib/client/device-copy.ts";
import type { SaveStatus } from "#lib/client/provider.ts";
import type { Role } from "#lib/policy/can.ts";
import type { Slot } from "#lib/programme/layout.ts";
import type { MonthProblem } from "#lib/programme/problems.ts";
import type { DeletedSlot } from "#lib/programme/read.ts";
import type { PlanSummary, PlansKnown, Present } from "#lib/protocol/messages.ts";

export interface MonthPageProps {
  readonly month: string;
  readonly generation: string;
  readonly me: { readonly id: string; readonly name: string };
  readonly writes: boolean;
  readonly people: readonly { readonly id: string; readonly name: string; readonly roles: readonly Role[] }[];
  readonly rooms: readonly { readonly id: string; readonly name: string }[];
  /** Plans this person may read: what a slot can be given. */
  readonly plans: readonly PlanSummary[];
  /** What is known of those that slots use, until the server says more. */
  readonly used: PlansKnown;
}

export interface MonthSnapshot {
  /** False until the month was read, from this device or the server. */
  readonly ready: boolean;
  readonly slots: readonly Slot[];
  readonly deleted: readonly DeletedSlot[];
  readonly problems: ReadonlyMap<string, readonly MonthProblem[]>;
  /** By id: those this person may read, and those that slots use. */
  readonly plans: ReadonlyMap<string, PlanSummary>;
  readonly writes: boolean;
  readonly present: readonly Present[];
  readonly save: SaveStatus;
  /** Whether this device has a copy of the month. */
  readonly copy: CopyState;
  /** 'YYYY-MM-DD' where this browser is. */
  readonly today: string;
}
