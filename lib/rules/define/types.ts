/** What a rule is and what it finds. One rule, one file; everything shown about a rule is made from that file. */
import type { z } from "zod/mini";
import type { Balance } from "#lib/balance/balance.ts";
import type { ClockRow } from "#lib/clock/clock.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import type { FindingLevel, Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";

export interface Finding {
  readonly rule: string;
  readonly level: FindingLevel;
  /** Ids of the items it is about, in plan order; empty when it is about the whole plan. */
  readonly items: readonly string[];
  readonly message: string;
  readonly values: Readonly<Record<string, unknown>>;
  /** The same finding from one run and one reader to the next: rule, message id, items and what of them, never the words. */
  readonly key?: string;
}

/** A move item with what belongs to it. */
export interface PlacedMove {
  readonly item: MoveItem;
  /** Undefined when the plan does not carry the move. */
  readonly move: Move | undefined;
  readonly row: ClockRow;
  /** Place among all items of the plan, from 0. */
  readonly index: number;
}

/**
 * What the findings of a rule depend on. The check is asked again only when something of it changed, and what is not named
 * here is not there for the rule to look at.
 *
 *   item    one move item, its library move, head and machines. Asked once an item.
 *   change  the same and all items back to the last move whose set-up is known, timed as if the class began there. Asked
 *           once an item, for the findings about that item.
 *   voice   one move item, the one before it, and what is said around both, on the class's clock. Asked once an item, for
 *           the findings about that item.
 *   claims  the lines of one move item, what is said on the way into it and in it, and the whole class without any other
 *           word. Asked once an item with a line that states something of the plan, for the findings about that item.
 *   times   the whole class without a word of its scripts and pauses.
 *   setups  the whole class without words, its moves without their own times.
 *   kinds   the same, and of the words which kinds of line each item has.
 */
export const READS = ["item", "change", "voice", "claims", "times", "setups", "kinds"] as const;
export type RuleReads = (typeof READS)[number];

/** What a rule may look at: the plan with its arithmetic done once, as far as the rule says that it reads it. */
export interface RuleContext {
  readonly plan: Plan;
  readonly rows: readonly ClockRow[];
  /** Seconds, closing included. */
  readonly total: number;
  /** The move items in plan order. */
  readonly moves: readonly PlacedMove[];
  readonly balance: Balance;
  /** The way into every move whose data are known, in plan order. */
  readonly steps: readonly SetupStep[];
  /** What is said when; empty for a damaged plan whose times are none. */
  readonly track: CueTrack;
}

/** What a check gives back: which of the rule's messages, about which items, with which numbers. */
export interface Found<M extends string = string> {
  readonly message: M;
  readonly items: readonly string[];
  /** Fills the holes of the message and goes out with the finding. See `fillMessage` for how values are worded. */
  readonly values: Readonly<Record<string, unknown>>;
  /** Tells two findings of one message and the same items apart: a spring, a group, a condition. Part of the key. */
  readonly about?: string;
  /** A level below the rule's own for this case; the house standard's level wins over both. */
  readonly level?: FindingLevel;
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

/** Made when they are asked for: a page that only checks neither fetches nor builds them. */
export interface RuleExamples {
  readonly pass: readonly PassExample[];
  readonly fail: readonly FailExample[];
}

export type LimitsSchema = z.ZodMiniObject<Record<string, z.ZodMiniType>>;

export interface Rule<M extends string = string, L extends LimitsSchema = LimitsSchema> {
  /** kebab-case; the file's name; names the problem. */
  readonly id: string;
  readonly reads: RuleReads;
  readonly title: string;
  /** The harm, in a sentence. */
  readonly why: string;
  /** The remedy, in a sentence. */
  readonly fix: string;
  readonly level: FindingLevel;
  /** 'common practice, no source', or a publication. */
  readonly source: string;
  /** What a studio may set, units in the names, every key with its default. */
  readonly limits: L;
  /** Message id -> one short sentence with `{holes}`. */
  readonly messages: Readonly<Record<M, string>>;
  readonly check: (ctx: RuleContext, limits: z.output<L>) => readonly Found<M>[];
}

/** A rule with a studio's limits over its own. */
export interface LimitedRule {
  /** False: the studio's could not be read and the rule's own count. */
  readonly limitsRead: boolean;
  readonly check: (ctx: RuleContext) => readonly Found[];
}

/** A rule as the registry holds it: its limits are read and checked inside, so that rules of any limits fit one list. */
export interface AnyRule extends Omit<Rule, "check" | "limits"> {
  readonly limits: LimitsSchema;
  readonly within: (limits: unknown) => LimitedRule;
}
