/** What a rule is and what it finds. Each rule is one file, and everything shown about it comes from that file. */
import type { z } from "zod/mini";
import type { Balance } from "#lib/balance/balance.ts";
import type { ClockRow } from "#lib/clock/clock.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import type { FindingLevel, Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import type { ItemClaims } from "#lib/talk/claims/types.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";

export interface Finding {
  readonly rule: string;
  readonly level: FindingLevel;
  /** Ids of the items it is about, in plan order; empty when it is about the whole plan. */
  readonly items: readonly string[];
  readonly message: string;
  readonly values: Readonly<Record<string, unknown>>;
  /** Identifies the finding across runs and readers: rule, message id, items and `about`, never the words. */
  readonly key?: string;
}

/** A move item with its library move and its row on the clock. */
export interface PlacedMove {
  readonly item: MoveItem;
  /** Undefined when the plan does not carry the move. */
  readonly move: Move | undefined;
  readonly row: ClockRow;
  /** Index among all items of the plan. */
  readonly index: number;
}

/**
 * What the findings of a rule depend on. The rule runs again only when something of it has changed, and it cannot look at
 * anything else.
 *
 *   item    one move item, its library move, head and machines. Runs once an item.
 *   change  the same, with the words of its set-up, safety and start lines only, and all items back to the last move whose
 *           set-up is known, moves without words and times, timed as if the class began there. Runs once an item, for the
 *           findings about that item.
 *   voice   one move item, the one before it, and what is said around both, in seconds from the start of its work; and how
 *           long the same move was done earlier in its block. Runs once an item, for the findings about that item.
 *   claims  the lines of one move item, what is said in the change into it and during it, in seconds from the start of its
 *           work, and the whole class without any other words or times. Where it stands in the class and its block, in the
 *           same seconds, only if one of its lines claims something about a time (`lib/talk/claims/claims.ts`). Runs once an
 *           item that has a line with a claim about the plan, for the findings about that item.
 *   times   the whole class without the words of its scripts and pauses.
 *   setups  the whole class without words, its moves without their own times.
 *   kinds   the same, and which kinds of line each item has.
 */
export const READS = ["item", "change", "voice", "claims", "times", "setups", "kinds"] as const;
export type RuleReads = (typeof READS)[number];

/** Where an item stands, in seconds on the clock of the check. */
export interface PlaceInClass {
  readonly classFrom: number;
  readonly classTo: number;
  /** The end of the last item. */
  readonly workTo: number;
  /** From the start of the first move of its block to the end of the last one. */
  readonly blockFrom: number;
  readonly blockTo: number;
}

/**
 * A moment on the clock of the check, as a value of a finding. People read it as a time of the class ("12:30"), so a finding
 * whose item begins later is worded anew and not looked for again.
 */
export class Moment {
  readonly seconds: number;

  constructor(seconds: number) {
    this.seconds = seconds;
  }
}

/** What a rule may look at: the plan with its arithmetic done once, as far as the rule declares to read it. */
export interface RuleContext {
  readonly plan: Plan;
  readonly rows: readonly ClockRow[];
  /** Seconds, closing included. */
  readonly total: number;
  /** The move items in plan order. */
  readonly moves: readonly PlacedMove[];
  readonly balance: Balance;
  /** The change into every move that the plan carries, in plan order. */
  readonly steps: readonly SetupStep[];
  /** What is said when; empty when the times are damaged. */
  readonly track: CueTrack;
  /** Seconds of the longest item of the same move before it in its block (`lib/plan/blocks.ts`); 0 for none. */
  readonly earlierSeconds: (placed: PlacedMove) => number;
  readonly placeInClass: (placed: PlacedMove) => PlaceInClass;
}

/** What a check returns: one of the rule's messages, the items it is about, and its numbers. */
export interface Found<M extends string = string> {
  readonly message: M;
  readonly items: readonly string[];
  /** Fills the holes of the message and stays on the finding, a `Moment` as a clock time. `fillMessage` words them. */
  readonly values: Readonly<Record<string, unknown>>;
  /** Tells apart two findings with the same message and items: a spring, a group, a condition. Part of the key. */
  readonly about?: string;
  /** A level below the rule's own for this case; the studio's level wins over both. */
  readonly level?: FindingLevel;
  /** True when the words may mean it and may not: such a finding is never above "look", whatever the studio's level. */
  readonly unsure?: boolean;
}

interface PassExample {
  /** A sentence fragment: what is right here. */
  readonly say: string;
  readonly plan: Plan;
}
export interface FailExample extends PassExample {
  /** The message ids expected, in the order of the findings. */
  readonly expect: readonly string[];
}

/** Made by a function, so that pages that only check never build them. */
export interface RuleExamples {
  readonly pass: readonly PassExample[];
  readonly fail: readonly FailExample[];
}

export type LimitsSchema = z.ZodMiniObject<Record<string, z.ZodMiniType>>;

export interface Rule<M extends string = string, L extends LimitsSchema = LimitsSchema> {
  /** kebab-case and the same as the file's name; it names the problem. */
  readonly id: string;
  readonly reads: RuleReads;
  /** Given where `reads` is "claims", and only there. The rule brings the reader, so a page can start without either. */
  readonly claims?: ItemClaims;
  readonly title: string;
  /** The harm, in one sentence. */
  readonly why: string;
  /** What to do, in one sentence. */
  readonly fix: string;
  readonly level: FindingLevel;
  /** Where its numbers come from: publications (author, title, year), or "common practice, no source". */
  readonly source: string;
  /** What a studio may set, units in the names, every key with its default. */
  readonly limits: L;
  /** Message id -> what is wrong with its numbers, then what to do, under 160 characters with `{holes}`. */
  readonly messages: Readonly<Record<M, string>>;
  readonly check: (ctx: RuleContext, limits: z.output<L>) => readonly Found<M>[];
  /** What it also finds in a change by itself, where `reads` is not "change". */
  readonly inChange?: (ctx: RuleContext) => readonly Found<M>[];
}

/** A rule with a studio's limits over its own. */
export interface LimitedRule {
  /** False when the studio's limits could not be read and the rule's own are used. */
  readonly limitsRead: boolean;
  readonly check: (ctx: RuleContext) => readonly Found[];
  readonly inChange?: ((ctx: RuleContext) => readonly Found[]) | undefined;
}

/** A rule as the registry holds it. Its limits are parsed inside, so that rules with different limits fit one list. */
export interface AnyRule extends Omit<Rule, "check" | "inChange" | "limits"> {
  readonly limits: LimitsSchema;
  readonly within: (limits: unknown) => LimitedRule;
}
