/** What a plan page knows at one moment: plain frozen data, made by `PlanSession` and read by every component. */

import type { Balance } from "#lib/balance/balance.ts";
import type { ServerFacts } from "#lib/client/doc-session/description.ts";
import type { Snapshot } from "#lib/client/doc-session/facts.ts";
import type { ClockRow } from "#lib/clock/clock.ts";
import type { ClassTalk } from "#lib/cues/class-talk.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import type { DeletedItem } from "#lib/doc/read.ts";
import type { OutlinePart } from "#lib/plan/outline.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Role } from "#lib/policy/can.ts";
import type { StateNews, ThreadView } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import type { ItemTalk } from "#lib/talk/talk.ts";
import type { PlanStudio } from "#server/plans/plan-studio.ts";

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
  /** As it was when the page was made; `PlanSession.studio` is what it is now. */
  readonly studio: PlanStudio;
  /** As the lists show it; the document's own title wins as soon as it is read. */
  readonly title: string;
  /** The class in words as it was when the page was made; shown until the document is read. */
  readonly outline: readonly OutlinePart[];
  readonly rights: Rights;
  /** What the person may do with the plan besides; asked again by the server at every act. */
  readonly may: Readonly<Record<"handIn" | "handBack" | "sign" | "share" | "delete", boolean>>;
  readonly state: StateNews;
}

export interface Rights {
  readonly writes: boolean;
  readonly comments: boolean;
}

export interface Derived {
  readonly plan: Plan;
  /** One row an item, in plan order. */
  readonly rows: readonly ClockRow[];
  /** Seconds, closing included. */
  readonly total: number;
  readonly balance: Balance;
  /** Seconds of talk and the seconds there are, by item id; nothing said, no entry. */
  readonly talk: ReadonlyMap<string, ItemTalk>;
  /** What is said when, as the rules looked at it, and how much of the class it is. */
  readonly track: CueTrack;
  readonly classTalk: ClassTalk;
  /** Findings of this page's own copy. */
  readonly findings: readonly Finding[];
  readonly deleted: readonly DeletedItem[];
}

/** What the server says beside the document. */
export interface NewsState extends ServerFacts {
  readonly state: StateNews;
  readonly threads: readonly ThreadView[];
}

export type SessionSnapshot = Snapshot<Derived, NewsState>;
