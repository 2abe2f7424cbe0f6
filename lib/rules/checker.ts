/**
 * Runs the rules over one plan while it is being written. A rule runs again only where something that it declares to read
 * has changed. The findings are the same as those of a checker that sees the plan for the first time.
 */

import { tellingsOn } from "#lib/clock/clock.ts";
import { Kept, KeptEach } from "#lib/memo/kept.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import { earlierInBlocks, placedMoves, placesInClass, ScopedContext } from "./context.ts";
import type { AnyRule, Finding, PlaceInClass } from "./define/types.ts";
import { type Batch, batchOf, findingsInOrder } from "./findings.ts";
import type { KnownParts } from "./known-plan.ts";
import { findingsOfMove, inClass, type MoveFindings, type MovePlace, moveReads } from "./of-move.ts";
import { type StudioRules, studioRulesOf } from "./studio-rules.ts";

export class RuleChecker {
  private readonly rules: readonly AnyRule[];
  private readonly studio = new Kept<StudioRules>();
  private readonly places = new Kept<readonly PlaceInClass[]>();
  private readonly moves = new KeptEach<MoveFindings>();
  private readonly times = new Kept<Batch>();
  private readonly setups = new Kept<Batch>();
  private readonly kinds = new Kept<Batch>();
  private readonly all = new Kept<readonly Finding[]>();

  constructor(rules: readonly AnyRule[]) {
    this.rules = rules;
  }

  /** In the order of `PlanCheck`. */
  findings(known: KnownParts): readonly Finding[] {
    const { standards } = known;
    const studio = this.studio.get([standards], () => studioRulesOf(this.rules, standards));
    const batches = this.ofMoves(studio, known);
    batches.push(
      this.times.get([studio, known.times, known.clock], () => ofTimes(studio, known)),
      this.setups.get([studio, known.setups], () => ofSetups(studio, "setups", known.setups)),
      this.kinds.get([studio, known.kinds], () => ofSetups(studio, "kinds", known.kinds)),
    );
    // The list of items in `setups` stays the same value while the plan's order does.
    const { items } = known.setups;
    return this.all.get([studio, items, ...batches], () => findingsInOrder(studio.rules, items, batches));
  }

  /** The rules that run once for each move item. */
  private ofMoves(studio: StudioRules, known: KnownParts): Batch[] {
    const moves = placedMoves(known.plan, known.clock.rows);
    const earlier = earlierInBlocks(known.plan, moves);
    const { times, clock, ownRows } = known;
    const places = this.places.get([times, clock], () => placesInClass(times.items, clock));
    this.moves.round();
    let from = 0;
    return moves.map((placed, n) => {
      const { item, row, index } = placed;
      const before = moves[n - 1];
      const ofRows = { own: ownRows[index] ?? row, ownBefore: before && ownRows[before.index], place: places[index] };
      const at: MovePlace = { placed, before, ...ofRows, earlier: earlier[n] ?? 0, from, n };
      if (placed.move) from = index;
      const reads = moveReads(studio, known, at);
      return inClass(
        this.moves.get(item.id, reads, (was) => findingsOfMove(studio, known, at, was)),
        row,
      );
    });
  }
}

function ofTimes(studio: StudioRules, { times: plan, clock, balance }: KnownParts): Batch {
  const given = { ...clock, plan, moves: placedMoves(plan, clock.rows), balance: () => balance };
  return batchOf(
    studio.reading.times,
    new ScopedContext("times", { ...given, steps: () => walkSetups(plan, tellingsOn(clock.rows)) }),
  );
}

function ofSetups(studio: StudioRules, reads: "setups" | "kinds", plan: Plan): Batch {
  const given = { plan, moves: placedMoves(plan, undefined), steps: () => walkSetups(plan) };
  return batchOf(studio.reading[reads], new ScopedContext(reads, given));
}
