/** What people are told of: each kind of notice, what its sentence is made of, and how it is told unless they choose. */

import type { Role } from "#lib/policy/can.ts";
import type { ChangedClass } from "./class-words.ts";

/** How a kind reaches somebody: by e-mail in the daily digest, by e-mail at once, or in the app alone. */
export const TOLD = ["digest", "at-once", "off"] as const;
export type Told = (typeof TOLD)[number];

/** What a notice is made of. Names and titles are looked up when it is read, so that a notice never shows an old one. */
export interface NoticeData {
  /** Who did it; null for the program itself. */
  readonly byId: string | null;
  readonly round?: number;
  readonly edition?: number;
  readonly threadId?: string;
  readonly proposalId?: string;
  /** The item that it is about. */
  readonly itemId?: string;
  /** A proposal was taken or declined. */
  readonly taken?: boolean;
  /** Of a proposal that was taken, where it was not all of it. */
  readonly part?: { readonly count: number; readonly of: number; readonly named: readonly string[] };
  /** A mail that could not be sent. */
  readonly mailId?: string;
  /** A month that was signed, "2026-12"; `edition` is the month's. */
  readonly month?: string;
  /** Why a backup could not be made, as it was then: the disk may be another one when it is read. */
  readonly why?: string;
  /** Days and times as they were then: they are what is told, and no name is among them. */
  readonly changedClass?: ChangedClass;
  /** Many at once, by time, in the place of one. */
  readonly changedClasses?: readonly ChangedClass[];
}

interface NoticeKindFacts {
  readonly label: string;
  /** Proposed when somebody chooses; nobody is sent anything before they have chosen. */
  readonly usual: Told;
  /** Whom it can concern: only they are asked how they want to be told. */
  readonly roles: readonly Role[];
  /** Always in the app alone. */
  readonly neverMailed?: true;
}

const WRITERS = ["trainee", "coach", "lead"] as const satisfies readonly Role[];

export const NOTICE_KINDS = {
  offered: { label: "A plan is offered for reading", usual: "digest", roles: ["lead"] },
  "taken-back": { label: "A plan that I am reading is taken back", usual: "at-once", roles: ["lead"] },
  returned: { label: "My plan is returned with notes", usual: "at-once", roles: WRITERS },
  signed: { label: "My plan is signed off", usual: "at-once", roles: WRITERS },
  withdrawn: { label: "An edition of mine is withdrawn", usual: "at-once", roles: WRITERS },
  mention: { label: "Somebody names me in a thread", usual: "digest", roles: WRITERS },
  comment: { label: "A comment on my plan or in my thread", usual: "digest", roles: WRITERS },
  proposal: { label: "A change of my plan is proposed", usual: "digest", roles: WRITERS },
  answer: { label: "My proposal is taken or declined", usual: "digest", roles: ["lead"] },
  marks: { label: "Marks are set for me", usual: "digest", roles: WRITERS },
  "class-changed": {
    label: "A class of mine changes within three days",
    usual: "at-once",
    roles: ["coach", "lead"],
  },
  "class-ahead": {
    label: "A class of mine in a signed month is called off or changes hands",
    usual: "digest",
    roles: ["coach", "lead"],
  },
  "month-signed": {
    label: "A month of the programme is signed off",
    usual: "digest",
    roles: ["coach", "lead", "manager"],
  },
  "backup-failed": { label: "A backup could not be made", usual: "at-once", roles: ["manager"] },
  "mail-failed": { label: "A mail could not be sent", usual: "off", roles: ["manager"], neverMailed: true },
} as const satisfies Readonly<Record<string, NoticeKindFacts>>;

export type NoticeKind = keyof typeof NOTICE_KINDS;

const factsOf = (kind: NoticeKind): NoticeKindFacts => NOTICE_KINDS[kind];

export const isNoticeKind = (word: string): word is NoticeKind => Object.hasOwn(NOTICE_KINDS, word);

/** How somebody wants to be told, by kind; a kind that is missing is told as it usually is. */
export type KindChoices = Readonly<Partial<Record<NoticeKind, Told>>>;

export const toldAs = (choices: KindChoices, kind: NoticeKind): Told =>
  factsOf(kind).neverMailed ? "off" : (choices[kind] ?? factsOf(kind).usual);

/** The kinds that somebody with these roles chooses about, in the order of the list above. */
export const kindsToChoose = (roles: readonly Role[]): NoticeKind[] =>
  Object.keys(NOTICE_KINDS)
    .filter(isNoticeKind)
    .filter((kind) => !factsOf(kind).neverMailed && factsOf(kind).roles.some((role) => roles.includes(role)));
