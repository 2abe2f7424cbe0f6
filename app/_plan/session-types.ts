/** What a plan page knows at one moment: plain frozen data, made by `PlanSession` and read by every component. */

import type { Balance } from "#lib/balance/balance.ts";
import type { CopyState } from "#lib/client/device-copy.ts";
import type { ClockRow } from "#lib/clock/clock.ts";
import type { DeletedItem } from "#lib/doc/read.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Role } from "#lib/policy/can.ts";
import type { Present, StateNews, ThreadView } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/types.ts";
import type { ClassTalk, ItemTalk } from "#lib/talk/talk.ts";
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
  readonly rights: Rights;
  /** What the person may do with the plan besides; asked again by the server at every act. */
  readonly may: Readonly<Record<"handIn" | "handBack" | "sign" | "share" | "delete", boolean>>;
  readonly state: StateNews;
}

export interface Rights {
  readonly writes: boolean;
  readonly comments: boolean;
}

/**
 * Where this page's words are. `opening`: nothing has been read yet. `saved`: on the server's disk. `sending`: on
 * their way. `offline`: in this page and, as `copy` says, on this device. `storage-failing`: the server cannot write; tried again.
 * `ended`: the server closed this page for good, see `closeSentence`.
 */
export type SaveState = "opening" | "saved" | "sending" | "offline" | "storage-failing" | "ended";

/** Somebody else on this page and the item they are on. */
export interface Place {
  readonly clientId: number;
  readonly userId: string;
  readonly name: string;
  readonly itemId: string | null;
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
  /** The same for the whole class, and the share that is talked through. */
  readonly classTalk: ClassTalk;
  /** Findings of this page's own copy. */
  readonly findings: readonly Finding[];
  readonly deleted: readonly DeletedItem[];
}

export interface SessionSnapshot extends Derived {
  /** False until the document has been read from this device or the server. */
  readonly ready: boolean;
  readonly saveState: SaveState;
  readonly closeCode: number | null;
  readonly closeSentence: string | null;
  readonly rights: Rights;
  readonly present: readonly Present[];
  readonly places: readonly Place[];
  readonly state: StateNews;
  readonly threads: readonly ThreadView[];
  /** Findings of the server's copy; null until the first news of them. */
  readonly serverFindings: { readonly hash: string; readonly findings: readonly Finding[] } | null;
  readonly selectedId: string | null;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** One sentence for the live region: what the last act did. */
  readonly said: string;
  /** Whether this device has a copy of the words. */
  readonly copy: CopyState;
}
