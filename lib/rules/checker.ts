/**
 * Runs the rules over one plan as it is written: each rule is asked again only about what it says that it reads, and only
 * where something of that changed. A checker that has seen a plan before answers as one that sees it for the first time.
 */
import type { PlanParts } from "#lib/analysis/parts.ts";
import type { Balance } from "#lib/balance/balance.ts";
import { type ClassClock, classClock } from "#lib/clock/clock.ts";
import type { PlacedSpan } from "#lib/cues/place-span.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import { Kept, KeptEach } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { moveOf, own } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem, Standards } from "#lib/plan/schema.ts";
import { claimsOf } from "#lib/talk/claims.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import { NOTHING_SAID, placedMoves, ScopedContext } from "./context.ts";
import { type Batch, batchOf, inOrder, NOTHING_FOUND } from "./findings.ts";
import { type House, houseOf } from "./house.ts";
import { RULES } from "./registry.ts";
import type { AnyRule, Finding, PlacedMove } from "./types.ts";

/** What is known of a plan before any rule is asked. */
export interface KnownPlan extends PlanParts {
  readonly standards: Standards | undefined;
  readonly clock: ClassClock;
  readonly balance: Balance;
  /** One more than there are moves; null for times in which nothing can be placed. */
  readonly spans: readonly PlacedSpan[] | null;
}

export class RuleChecker {
  private readonly rules: readonly AnyRule[];
  private readonly house = new Kept<House>();
  private readonly items = new KeptEach<Batch>();
  private readonly changes = new KeptEach<Batch>();
  private readonly voices = new KeptEach<Batch>();
  private readonly claims = new KeptEach<Batch>();
  private readonly times = new Kept<Batch>();
  private readonly setups = new Kept<Batch>();
  private readonly kinds = new Kept<Batch>();
  private readonly all = new Kept<readonly Finding[]>();

  constructor(rules: readonly AnyRule[] = RULES) {
    this.rules = rules;
  }

  /** In the order of `PlanCheck`. */
  findings(known: KnownPlan): readonly Finding[] {
    const { plan, standards } = known;
    const house = this.house.get([standards], () => houseOf(this.rules, standards));
    for (const kept of [this.items, this.changes, this.voices, this.claims]) kept.round();
    const batches = this.ofMoves(house, known);
    batches.push(
      this.times.get([house, known.times], () => this.ofTimes(house, known)),
      this.setups.get([house, known.setups], () => ofSetups(house, "setups", known.setups)),
      this.kinds.get([house, known.kinds], () => ofSetups(house, "kinds", known.kinds)),
    );
    return this.all.get([house, known.setups, ...batches], () => inOrder(house.rules, plan.items, batches));
  }

  /** What is asked of each move item. */
  private ofMoves(house: House, known: KnownPlan): Batch[] {
    const { plan, clock } = known;
    const moves = placedMoves(plan, clock.rows);
    let from = 0;
    return moves.flatMap((placed, n) => {
      const at: Place = { placed, before: moves[n - 1], from, around: aroundOf(known, n), n };
      if (placed.move) from = placed.index;
      return [
        this.ofItem(house, known, placed),
        this.ofChange(house, known, at),
        this.ofVoice(house, known, at),
        this.ofClaims(house, known, at),
      ];
    });
  }

  private ofItem(house: House, { frame, plan }: KnownPlan, { item, move }: PlacedMove): Batch {
    return this.items.get(item.id, [house, frame, item, move], () => {
      const small = fewItems(frame, plan, [item]);
      const ctx = new ScopedContext("item", { plan: small, moves: placedMoves(small, undefined) });
      return batchOf(house.reading.item, ctx);
    });
  }

  private ofChange(house: House, { frame, plan }: KnownPlan, { placed: { item, index }, from }: Place): Batch {
    const reads: unknown[] = [house, frame];
    for (let at = from; at <= index; at++) {
      const one = plan.items[at];
      reads.push(one, one?.kind === "move" ? moveOf(plan, one) : undefined);
    }
    return this.changes.get(item.id, reads, () => {
      const small = fewItems(frame, plan, plan.items.slice(from, index + 1));
      const { rows } = classClock(small);
      const steps = () => walkSetups(small).filter((step) => step.item === item);
      const ctx = new ScopedContext("change", { plan: small, moves: placedMoves(small, rows), steps });
      return batchOf(house.reading.change, ctx, item.id);
    });
  }

  private ofVoice(house: House, { frame, plan }: KnownPlan, { placed, before, around }: Place): Batch {
    const reads = [house, frame, placed.item, placed.move, placed.row, before?.item, before?.move, before?.row];
    return this.voices.get(placed.item.id, [...reads, ...around], () => {
      const moves = before ? [before, placed] : [placed];
      const items = moves.map(({ item }) => item);
      const given = { plan: fewItems(frame, plan, items), moves, track: () => trackOf(around) };
      return batchOf(house.reading.voice, new ScopedContext("voice", given), placed.item.id);
    });
  }

  private ofClaims(house: House, { times, clock }: KnownPlan, { placed, around, n }: Place): Batch {
    if (!claimsAnything(placed.item)) return NOTHING_FOUND;
    return this.claims.get(placed.item.id, [house, times, placed.item, ...around], () => {
      const plan = { ...times, items: times.items.map((item, i) => (i === placed.index ? placed.item : item)) };
      const moves = placedMoves(plan, clock.rows);
      const ctx = new ScopedContext("claims", { ...clock, plan, moves, track: () => trackOf(around) });
      return batchOf(house.reading.claims, ctx, moves[n]?.item.id);
    });
  }

  private ofTimes(house: House, { times: plan, clock, balance }: KnownPlan): Batch {
    const given = { ...clock, plan, moves: placedMoves(plan, clock.rows), balance: () => balance };
    return batchOf(house.reading.times, new ScopedContext("times", { ...given, steps: () => walkSetups(plan) }));
  }
}

function ofSetups(house: House, reads: "setups" | "kinds", plan: Plan): Batch {
  const given = { plan, moves: placedMoves(plan, undefined), steps: () => walkSetups(plan) };
  return batchOf(house.reading[reads], new ScopedContext(reads, given));
}

/** A move item among the others. */
interface Place {
  readonly placed: PlacedMove;
  readonly before: PlacedMove | undefined;
  /** Place among all items of the last move before it whose set-up is known, else of the first item. */
  readonly from: number;
  /** What is said on the way into it and in it. */
  readonly around: readonly PlacedSpan[];
  /** Place among the moves. */
  readonly n: number;
}

const aroundOf = ({ spans }: KnownPlan, n: number): readonly PlacedSpan[] => spans?.slice(n, n + 2) ?? [];

const trackOf = (around: readonly PlacedSpan[]): CueTrack => ({
  ...NOTHING_SAID,
  cues: around.flatMap(({ cues }) => cues),
  dropped: around.flatMap(({ dropped }) => dropped),
});

const claimsAnything = perValue(({ script = [] }: MoveItem): boolean =>
  script.some((line) => claimsOf(line).length > 0),
);

function fewItems(frame: Plan, { moves }: Plan, items: readonly PlanItem[]): Plan {
  const few: Plan["moves"] = {};
  for (const item of items) {
    const move = item.kind === "move" ? own(moves, item.move) : undefined;
    if (item.kind === "move" && move) few[item.move] = move;
  }
  return { ...frame, moves: few, items: [...items] };
}
