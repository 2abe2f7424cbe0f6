/** What the month's page is given by the server, and what its components read. */
import type { ServerFacts } from "#lib/client/doc-session/description.ts";
import type { Snapshot } from "#lib/client/doc-session/facts.ts";
import type { Role } from "#lib/policy/can.ts";
import type { Slot } from "#lib/programme/layout.ts";
import type { MonthProblem } from "#lib/programme/problems.ts";
import type { DeletedSlot } from "#lib/programme/read.ts";
import type { PlanSummary, PlansKnown } from "#lib/protocol/messages.ts";

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

/** What is worked out from the month and the plans that its slots use. */
export interface MonthDerived {
  readonly slots: readonly Slot[];
  readonly deleted: readonly DeletedSlot[];
  readonly problems: ReadonlyMap<string, readonly MonthProblem[]>;
  /** 'YYYY-MM-DD' where this browser is. */
  readonly today: string;
}

/** What the server says beside the document. */
export interface MonthHeard extends ServerFacts {
  /** By id: those this person may read, and those that slots use. */
  readonly plans: ReadonlyMap<string, PlanSummary>;
  /** Plans of slots that this person may not read. */
  readonly hidden: readonly string[];
}

export type MonthSnapshot = Snapshot<MonthDerived, MonthHeard>;
