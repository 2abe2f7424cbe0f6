/** What a rule is and what it finds. One rule, one file; everything shown about a rule is made from that file. */
import type { z } from "zod";
import type { Balance } from "#lib/balance/balance.ts";
import type { ClockRow } from "#lib/clock/clock.ts";
import type { FindingLevel, Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import type { Step } from "#lib/transitions/walk.ts";

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

/** What every rule may look at: the plan with its arithmetic done once. */
export interface RuleContext {
  readonly plan: Plan;
  readonly rows: readonly ClockRow[];
  /** Seconds, closing included. */
  readonly total: number;
  /** The move items in plan order. */
  readonly moves: readonly PlacedMove[];
  readonly balance: Balance;
  /** The way into every move whose data are known, in plan order. */
  readonly steps: readonly Step[];
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

export interface PassExample {
  /** A sentence fragment: what is right here. */
  readonly say: string;
  readonly plan: Plan;
}
export interface FailExample extends PassExample {
  /** The message ids expected, in the order of the findings. */
  readonly expect: readonly string[];
}

export type LimitsSchema = z.ZodObject<Record<string, z.ZodType>>;

export interface Rule<M extends string = string, L extends LimitsSchema = LimitsSchema> {
  /** kebab-case; the file's name; names the problem. */
  readonly id: string;
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
  readonly examples: { readonly pass: readonly PassExample[]; readonly fail: readonly FailExample[] };
  readonly check: (ctx: RuleContext, limits: z.output<L>) => readonly Found<M>[];
}

/** A rule as the registry holds it: its limits are read and checked inside, so that rules of any limits fit one list. */
export interface AnyRule extends Omit<Rule, "check" | "limits"> {
  readonly limits: LimitsSchema;
  /** Runs the check with a studio's limits over the defaults. Limits that cannot be read count as the defaults. */
  readonly run: (ctx: RuleContext, limits: unknown) => { found: readonly Found[]; limitsRead: boolean };
}
