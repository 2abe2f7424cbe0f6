/** What the server answers to a search, and what it gives a page to search by itself. Plain data. */
import type { PlanState } from "#lib/protocol/messages.ts";
import type { KnownPage } from "./known-pages.ts";
import type { FindableLine } from "./plan-lines.ts";

/** A line with the words, cut to a line's worth, and where it leads. */
export interface FoundLine extends Pick<FindableLine, "place" | "text"> {
  /** The plan's page at that place. */
  readonly href: string;
}

export interface FoundPlan {
  readonly id: string;
  readonly href: string;
  readonly title: string;
  /** Of its owner, when that is somebody else. */
  readonly ownerName: string | null;
  readonly state: PlanState;
  readonly archived: boolean;
  /** Without its title; empty when only that has the words. */
  readonly lines: readonly FoundLine[];
  /** How many more lines have them. */
  readonly more: number;
}

export interface FoundInLibrary {
  readonly href: string;
  readonly name: string;
  readonly line: string;
  readonly archived: boolean;
}

export interface FoundByWords {
  readonly plans: readonly FoundPlan[];
  readonly moves: readonly FoundInLibrary[];
  /** How many more plans and moves have the words. */
  readonly morePlans: number;
  readonly moreMoves: number;
  /** Plans of theirs whose words are still being read, so that the answer may lack some. */
  readonly unread: number;
}

/** What a page searches by itself, by kind; only what the person may open. */
export interface AtHand {
  /** The program's own, and their parts. */
  readonly pages: readonly KnownPage[];
  readonly rooms: readonly KnownPage[];
  /** Months, and the classes and holidays of the coming ones. */
  readonly classes: readonly KnownPage[];
  /** Signed plans that they may not open as plans. */
  readonly signed: readonly KnownPage[];
  readonly people: readonly KnownPage[];
  readonly rules: readonly KnownPage[];
}
