/** What a plan's page knows at one moment: plain frozen data that `PlanSession` makes and components read. */

import type { PlanAnalysis } from "#lib/analysis/analysis.ts";
import type { ServerFacts } from "#lib/client/doc-session/description.ts";
import type { Snapshot } from "#lib/client/doc-session/facts.ts";
import type { ClassClock } from "#lib/clock/clock.ts";
import type { TakenProposal } from "#lib/doc/proposal-marks.ts";
import type { DeletedItem } from "#lib/doc/read.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { OutlinePart } from "#lib/plan/outline.ts";
import type { Role } from "#lib/policy/can.ts";
import type { AcceptanceView, ProposalView, StateNews, ThreadView } from "#lib/protocol/messages.ts";
import type { Origin } from "#server/editions/origin.ts";
import type { DocStart } from "#server/plans/plan-start.ts";
import type { PlanStudio } from "#server/studio-data/plan-studio.ts";

/** The person at this page, as the server knows them. */
export interface Me {
  readonly id: string;
  readonly name: string;
  readonly roles: readonly Role[];
}

/** Everything a plan page is given by the server when it is opened. */
export interface PlanPageProps {
  readonly planId: string;
  readonly generation: string;
  readonly me: Me;
  readonly formats: Formats;
  /** As it was when the page was made; `PlanSession.studio` is what it is now. */
  readonly studio: PlanStudio;
  /** As the lists show it; the document's own title wins as soon as it is read. */
  readonly title: string;
  /** The class in words when the page was made; shown until the document is read. */
  readonly outline: readonly OutlinePart[];
  /** The document when the page was made, which it begins with; undefined where it has to wait for its socket. */
  readonly doc?: DocStart;
  readonly rights: Rights;
  /** What else the person may do with the plan. The server asks again at every act. */
  readonly may: Readonly<Record<"handIn" | "handBack" | "sign" | "share" | "delete" | "propose", boolean>>;
  readonly state: StateNews;
  /** The edition that it was made from, where the person may read it. */
  readonly origin?: Origin | null;
}

interface Rights {
  readonly writes: boolean;
  readonly comments: boolean;
}

/** What is worked out from this page's own copy, and what was taken out of it. */
export interface Derived extends Omit<PlanAnalysis, "clock">, ClassClock {
  readonly deleted: readonly DeletedItem[];
  /** Proposals that were taken and not undone since, by id. */
  readonly taken: ReadonlyMap<string, TakenProposal>;
  /** True until the rules that are fetched after the page have run too. */
  readonly moreToCheck: boolean;
}

/** What the server sends besides the document. */
export interface NewsState extends ServerFacts {
  readonly state: StateNews;
  readonly threads: readonly ThreadView[];
  /** Findings that a lead accepted as they stand; which of them still hold: `use-accepted.ts`. */
  /** Until the threads have been heard: how many are open about each item; null afterwards, and where that is not known. */
  readonly openThreadsAtStart: Readonly<Record<string, number>> | null;
  readonly accepted: readonly AcceptanceView[];
  /** Those that were neither declined nor withdrawn; which of them are done, `taken` says. */
  readonly proposals: readonly ProposalView[];
  /** All that closed plates show of this has been heard. */
  readonly whole: boolean;
}

export type SessionSnapshot = Snapshot<Derived, NewsState>;
