/** What a cue line can claim about the plan. */
import type { MoveItem } from "#lib/plan/schema.ts";

/** Where it was read. */
export interface SaidWords {
  /** As written. */
  readonly said: string;
  /** Characters of the line's text: from the first, up to but not including `to`. */
  readonly from: number;
  readonly to: number;
  /** False for words that may claim it and may not. */
  readonly sure: boolean;
}

export interface TimeClaim {
  readonly says: "time";
  readonly seconds: number;
  readonly unit: "seconds" | "minutes";
  /** Time still to go, all the time of the work, the same for each side, time already done, or any of them. */
  readonly which: "left" | "whole" | "each-side" | "done" | "any";
  /** What it is the time of; undefined where the words do not say. */
  readonly of?: "class" | "block" | "move";
  /** "About", "give or take". */
  readonly rough?: true;
  /** "Under five minutes", "more than an hour". */
  readonly bound?: "most" | "least";
  /** Words that may name the move it is the time of, or something else. */
  readonly what?: string;
}
export interface HalfwayClaim {
  readonly says: "halfway";
  /** "Over halfway": no less than half. */
  readonly past?: true;
  /** Words that may name the move. */
  readonly what?: string;
  readonly of?: "class" | "move";
}
export interface PartClaim {
  readonly says: "last" | "first";
  readonly what: "move" | "one" | "round" | "side" | "block";
  /** Words that may name the move it is said of. */
  readonly named?: string;
  readonly of?: "class" | "block";
}
export interface NextClaim {
  readonly says: "next";
  /** Words that hold a name, lower case without punctuation. */
  readonly name: string;
  /** Where in them the name stands; `within` is the first name in them. */
  readonly at: "start" | "end" | "within";
  /** Said so plainly of a move that a name which the plan does not know counts too. */
  readonly plain: boolean;
  /** Its words before the first comma, where there is one. */
  readonly head?: string;
}
export interface RoundsClaim {
  readonly says: "rounds";
  readonly count: number;
  /** How many there are, which one this is, how many are still to come or were done. */
  readonly which: "all" | "nth" | "more" | "done";
  /** "After this": the one at hand is not counted. */
  readonly afterThis?: true;
}
/** How many moves are still to come, this one not counted. */
export interface FollowingClaim {
  readonly says: "following";
  readonly of?: "class";
  readonly count: number;
  /** "Two moves left" may count the one at hand. */
  readonly withThis: boolean;
}
export interface RepsClaim {
  readonly says: "reps";
  readonly count: number;
  /** `more`: still to be done. `any`: still to be done, or all of them. */
  readonly which: "any" | "more";
  /** Words that may name the move: "twenty curls". */
  readonly what?: string;
  /** A bare number, which may be of seconds as well: how many seconds either way. */
  readonly orSeconds?: number;
}
export interface BreathClaim {
  readonly says: "breath";
  readonly breath: "in" | "out";
  /** The part of a repetition: said outright, or by a motion that is one half or the other of it depending on the move. */
  readonly during:
    | "out"
    | "back"
    | "push"
    | "pull"
    | "work"
    | "ease"
    | "up"
    | "down"
    | "open"
    | "close"
    | "bend"
    | "long";
}
export interface SideClaim {
  readonly says: "side";
  readonly side: "left" | "right" | "other";
  readonly then: boolean;
}
export interface SpringsClaim {
  readonly says: "springs";
  /** Undefined for one or more of them: "the middle spring". */
  readonly count: number | undefined;
  /** No others. */
  readonly only?: true;
  /** The words before "springs", or after a bare count; "" for springs of any kind. */
  readonly label: string;
}

type ClaimedFact =
  | TimeClaim
  | HalfwayClaim
  | PartClaim
  | NextClaim
  | RoundsClaim
  | FollowingClaim
  | RepsClaim
  | BreathClaim
  | SideClaim
  | SpringsClaim;
export type Claim = ClaimedFact & SaidWords;

/** A claim and the words of the clause that make it, as a range of the sentence. `sure` is true unless it says otherwise. */
export interface ClaimReading {
  readonly fact: ClaimedFact;
  readonly at: number;
  readonly length: number;
  readonly sure?: boolean;
}

/** Whether the lines of an item claim anything about the plan, and whether anything about a time. */
export interface ItemClaims {
  anything(item: MoveItem): boolean;
  times(item: MoveItem): boolean;
}
