/** What people are told of: each kind of notice, what its sentence is made of, and how it is told unless they choose. */

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
}

interface NoticeKindFacts {
  readonly label: string;
  readonly usual: Told;
}

export const NOTICE_KINDS = {
  offered: { label: "A plan is offered for reading", usual: "digest" },
  returned: { label: "My plan is returned with notes", usual: "at-once" },
  signed: { label: "My plan is signed off", usual: "at-once" },
  withdrawn: { label: "An edition of mine is withdrawn", usual: "at-once" },
  mention: { label: "Somebody names me in a thread", usual: "digest" },
  comment: { label: "A comment on my plan or in my thread", usual: "digest" },
  proposal: { label: "A change of my plan is proposed", usual: "digest" },
  answer: { label: "My proposal is taken or declined", usual: "digest" },
  marks: { label: "Marks are set for me", usual: "digest" },
  "mail-failed": { label: "A mail could not be sent", usual: "off" },
} as const satisfies Readonly<Record<string, NoticeKindFacts>>;

export type NoticeKind = keyof typeof NOTICE_KINDS;
