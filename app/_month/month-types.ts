/** What the server gives the month's page, and what its parts read. */

import type { ServerFacts } from "#lib/client/doc-session/description.ts";
import type { Snapshot } from "#lib/client/doc-session/facts.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { MonthLook } from "#lib/month/check/analyst.ts";
import type { MonthFile } from "#lib/month/types.ts";
import type { MonthStudio } from "#lib/programme/month-file.ts";
import type { MonthState } from "#lib/programme/month-reader.ts";
import type { DeletedSlot } from "#lib/programme/read.ts";
import type { AcceptanceView, PlanSummary, PlansKnown, SignedMonth } from "#lib/protocol/messages.ts";

export interface MonthPageProps {
  readonly month: string;
  readonly generation: string;
  readonly me: { readonly id: string; readonly name: string };
  readonly formats: Formats;
  readonly writes: boolean;
  /** Rooms, coaches, plans and limits, as this reader may know them. */
  readonly studio: MonthStudio;
  /** Plans this person may read: what a class can be given. */
  readonly plans: readonly PlanSummary[];
  /** The plans that classes use, as known when the page was made. */
  readonly used: PlansKnown;
  /** `sign`: a lead's, with accepting what was found. */
  readonly may: { readonly sign: boolean; readonly lookBack: boolean; readonly feeds: boolean };
  /** The newest edition. */
  readonly signed: SignedMonth | null;
  readonly accepted: readonly AcceptanceView[];
}

/** What its session needs. */
export type MonthSessionProps = Omit<MonthPageProps, "may">;

/** What is worked out from the month and the plans that its classes use. */
export interface MonthDerived {
  readonly state: MonthState;
  readonly file: MonthFile;
  readonly look: MonthLook;
  readonly deleted: readonly DeletedSlot[];
  /** 'YYYY-MM-DD' in the studio's zone. */
  readonly today: string;
}

/** What the server sends besides the document. */
export interface MonthHeard extends ServerFacts {
  /** By id: those this person may read, and those that classes use. */
  readonly plans: ReadonlyMap<string, PlanSummary>;
  /** Plans of classes that this person may not read. */
  readonly hidden: readonly string[];
  /** Rooms, coaches, plans and limits as last told. */
  readonly studio: MonthStudio;
  readonly signed: SignedMonth | null;
  readonly accepted: readonly AcceptanceView[];
}

export type MonthSnapshot = Snapshot<MonthDerived, MonthHeard>;
