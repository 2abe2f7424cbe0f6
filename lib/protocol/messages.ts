/**
 * Message types on a page's one socket. 0-3 are the y-websocket protocol's; 100 carries one JSON object from the
 * server to the page. Commands go over HTTP; a page sends nothing but document updates and its own awareness.
 */
import type { ById, MonthCoach, MonthFile, MonthPlan, MonthRoom, MonthSlot } from "#lib/month/types.ts";
import type { ProposalPart } from "#lib/proposal/parts.ts";

export const MESSAGE = { sync: 0, awareness: 1, auth: 2, queryAwareness: 3, news: 100 } as const;

/** A document's name on the socket path `/sync/<name>`: `plan/<id>` or `month/<yyyy-mm>`. */
export type DocKind = "plan" | "month";
export interface DocName {
  readonly kind: DocKind;
  readonly key: string;
}

export function parseDocName(name: string): DocName | undefined {
  const match = /^(plan)\/([a-z0-9][a-z0-9-]{0,63})$/.exec(name) ?? /^(month)\/(\d{4}-(?:0[1-9]|1[0-2]))$/.exec(name);
  return match ? { kind: match[1] as DocKind, key: match[2] as string } : undefined;
}

export const formatDocName = (name: DocName): string => `${name.kind}/${name.key}`;

/**
 * Query parameters a page connects with: the document and editor versions it speaks, the generation it holds, whose
 * words it carries, and the yjs client id it writes under.
 */
export const QUERY = { docVersion: "d", editorVersion: "e", generation: "g", userId: "u", clientId: "c" } as const;

export type PlanState = "in-writing" | "handed-in" | "handed-back" | "signed-off";

export interface Present {
  readonly userId: string;
  readonly name: string;
  /** False for somebody who may only read. */
  readonly writes: boolean;
}

/** An edition that a lead took out of use. */
export interface Withdrawal {
  readonly byName: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly reason: string;
}

/** The round of reading that is open, or the last one. */
export interface RoundNews {
  readonly number: number;
  /** The lead who has taken it up; null while nobody has, and after it has ended. */
  readonly reader: { readonly id: string; readonly name: string } | null;
  /** Since when, ms since the epoch. */
  readonly since: number | null;
  /** What matters most in a return, while the plan is returned. */
  readonly mainPoints: readonly string[];
  /** How it ended; null while it is open. */
  readonly ended?: RoundEnded | null;
  /** How the round before it ended. */
  readonly before?: RoundEnded | null;
}

export interface RoundEnded {
  readonly outcome: "returned" | "signed" | "taken-back";
  readonly byId: string;
  readonly byName: string;
  /** ms since the epoch. */
  readonly at: number;
}

export interface StateNews {
  readonly state: PlanState;
  /** Number of the newest signed edition, 0 when there is none. */
  readonly edition: number;
  /** SHA-256 (hex) of the newest edition's canonical plan, when there is one. */
  readonly editionHash: string | null;
  /** Set when that edition was withdrawn. */
  readonly withdrawn?: Withdrawal | null;
  /** Name of who offered it for reading, while it is offered for reading. */
  readonly handedInBy: string | null;
  /** Their id: they may cancel the hand-in. */
  readonly handedInById?: string | null;
  /** What was said with the last hand-in, hand-back or sign-off. */
  readonly note: string | null;
  /** Left out before the plan was first offered. */
  readonly round?: RoundNews;
  /** The newest moment that was kept of the plan; another one means that there is more to compare with. */
  readonly moment?: number | null;
}

export type Anchor =
  | { readonly kind: "plan" }
  | { readonly kind: "item"; readonly itemId: string }
  | {
      readonly kind: "words";
      readonly itemId: string;
      /** Yjs relative positions, base64. */
      readonly from: string;
      readonly to: string;
      readonly quote: string;
      /** Where the same words also stood when it was pinned: a relative position of the first letter of each. */
      readonly others?: readonly string[];
    }
  /** The change before an item. */
  | { readonly kind: "change"; readonly itemId: string }
  /** What a rule found; `key` is the finding's own. */
  | { readonly kind: "finding"; readonly rule: string; readonly itemIds: readonly string[]; readonly key: string };

export interface CommentView {
  readonly id: string;
  readonly authorId: string;
  readonly authorName: string;
  readonly body: string;
  /** ms since the epoch, UTC. */
  readonly at: number;
  /** Ids of the people who are named in it. */
  readonly names?: readonly string[];
}
export interface ThreadView {
  readonly id: string;
  readonly anchor: Anchor;
  readonly settled: boolean;
  /** Somebody who is now a lead has written in it, so only a lead settles it. */
  readonly leadSpoke: boolean;
  readonly comments: readonly CommentView[];
}

/** A *look again* that a lead accepted as it stands, with a reason. */
export interface AcceptanceView {
  readonly id: string;
  readonly rule: string;
  /** Identifies the finding with its items and its values (lib/acceptance). */
  readonly findingKey: string;
  /** The sentence that was accepted. */
  readonly message: string;
  readonly reason: string;
  readonly byName: string;
  /** ms since the epoch. */
  readonly at: number;
}

/** A change that a lead offers (lib/proposal). */
export interface ProposalView {
  readonly id: string;
  /** The item, or the heading of the block; null for the items before the first heading. */
  readonly itemId: string | null;
  readonly byId: string;
  readonly byName: string;
  /** ms since the epoch, as is `endedAt`. */
  readonly at: number;
  readonly note: string | null;
  readonly parts: readonly ProposalPart[];
  /** `taken`: somebody was given it to write; it is done once the document has its mark. */
  readonly state: "open" | "taken" | "declined" | "withdrawn";
  /** Ids of the parts that were taken. */
  readonly taken: readonly string[] | null;
  readonly endedByName: string | null;
  readonly endedAt: number | null;
  /** Said when it was declined. */
  readonly word: string | null;
}

/** A plan as the month and the desk list it. */
export interface PlanSummary {
  readonly id: string;
  readonly title: string;
  readonly state: PlanState;
  readonly edition: number;
  readonly lengthSeconds: number;
  readonly ownerName: string;
  /** Of the newest edition, where it was withdrawn. */
  readonly withdrawn?: Withdrawal;
}

/** The plans that a month's slots use, as one reader may see them. */
export interface PlansKnown {
  readonly plans: readonly PlanSummary[];
  /** Ids of plans this reader may not see. A plan in neither list is gone. */
  readonly hidden: readonly string[];
  /** By id, of every plan that a class names: what the month works with. Left out where only the list is asked for. */
  readonly facts?: ById<MonthPlan>;
}

/** What a month takes from its studio, and that may have changed since the page was made. Instants in ms since the epoch. */
export interface MonthBasis extends Pick<MonthFile, "limits" | "standards" | "weights" | "zone"> {
  readonly name: string;
  readonly rooms: ById<MonthRoom>;
  readonly coaches: ById<Pick<MonthCoach, "name" | "roles">>;
  /** Those that classes use or can be given, as the reader may know them. */
  readonly plans: ById<MonthPlan>;
  readonly changedAt?: number;
  /** Classes of the days before the month. */
  readonly earlier?: { readonly known: string; readonly slots: readonly MonthSlot[] };
}

/** A month as it was signed off, without the month itself. */
export interface SignedMonth {
  /** 1, 2, ... in a month. */
  readonly number: number;
  /** SHA-256 (hex) of the canonical month file. */
  readonly hash: string;
  readonly byName: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly note: string | null;
}

export type News =
  /** The build of the program that the server runs, when a page joins. */
  | { readonly t: "program"; readonly build: string }
  /** How many of this connection's document messages (sync step 2 and update) are on disk, in order. */
  | { readonly t: "saved"; readonly count: number }
  /**
   * Whether the server is failing to write just now. Nothing unsaved is dropped. `damaged`: it cannot write until
   * somebody restores its database.
   */
  | { readonly t: "storage"; readonly failing: boolean; readonly damaged?: true }
  /** Names the history of the server's copy. A page stores it with its local copy and sends it when it reconnects. */
  | { readonly t: "generation"; readonly generation: string }
  | { readonly t: "rights"; readonly writes: boolean; readonly comments: boolean }
  | { readonly t: "present"; readonly people: readonly Present[] }
  /**
   * Hashes of what the server's own check read and what it found (lib/analysis/marks). A page that holds the same plan
   * and found the same has nothing to fetch.
   */
  | { readonly t: "checked"; readonly plan: string; readonly findings: string }
  /**
   * Hash of what the plan takes from its studio (library, machines, standards): a page that holds another fetches it.
   */
  | { readonly t: "studio"; readonly mark: string }
  | { readonly t: "state"; readonly state: StateNews }
  /** All threads of the plan, when a page joins. */
  | { readonly t: "threads"; readonly threads: readonly ThreadView[] }
  /** One thread as it is now: a new one, or one that has changed. */
  | { readonly t: "thread"; readonly thread: ThreadView }
  /** Every acceptance of the plan or the month that nobody has ended. */
  | { readonly t: "accepted"; readonly accepted: readonly AcceptanceView[] }
  /** Those that are neither declined nor withdrawn. */
  | { readonly t: "proposals"; readonly proposals: readonly ProposalView[] }
  | ({ readonly t: "plans" } & PlansKnown)
  /** When a page joins a month, and when its studio changes. */
  | { readonly t: "month-basis"; readonly basis: MonthBasis }
  /** The newest edition of the month; null while it was never signed off. */
  | { readonly t: "month-signed"; readonly signed: SignedMonth | null };
