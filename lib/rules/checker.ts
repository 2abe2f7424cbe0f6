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
import { moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem, ScriptLine, Standards } from "#lib/plan/schema.ts";
import { type Claim, claimsIn } from "#lib/talk/claims.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import { NOTHING_SAID, placedMoves, ScopedContext } from "./context.ts";
import { type Batch, batchOf, inOrder } from "./findings.ts";
import { type House, houseOf } from "./house.ts";
import { RULES } from "./registry.ts";
import type { AnyRule, Finding, PlacedMove } from "./types.ts";

/** What is known of a plan before any rule is asked. */
export interface KnownPlan extends PlanParts {
  readonly standards: Standards | undefined;
  readonly clock: ClassClock;
  readonly balance: Balance;
  /** One more than there are moves, and the track they make; null for times in which nothing can be placed. */
  readonly voice: { readonly spans: readonly PlacedSpan[]; readonly track: CueTrack } | null;
}

export class RuleChecker {
  private readonly rules: readonly AnyRule[];
  private readonly house = new Kept<House>();
  private readonly items = new KeptEach<Batch>();
  private readonly changes = new KeptEach<Batch>();
  private readonly voices = new KeptEach<Batch>();
  private readonly times = new Kept<Batch>();
  private readonly setups = new Kept<Batch>();
  private readonly whole = new Kept<Batch>();
  private readonly all = new Kept<readonly Finding[]>();
  private readonly read = new WeakMap<ScriptLine, readonly Claim[]>();

  constructor(rules: readonly AnyRule[] = RULES) {
    this.rules = rules;
  }

  /** In the order of `PlanCheck`. */
  findings(known: KnownPlan): readonly Finding[] {
    const { plan, standards } = known;
    const house = this.house.get([standards], () => houseOf(this.rules, standards));
    for (const kept of [this.items, this.changes, this.voices]) kept.round();
    const moves = placedMoves(plan, known.clock.rows);
    const batches = [
      ...moves.map((placed) => this.ofItem(house, known, placed)),
      ...changesOf(plan).map((change) => this.ofChange(house, known, change)),
      ...moves.map((placed, n) => this.ofVoice(house, known, { placed, before: moves[n - 1], n })),
      this.times.get([house, known.times], () => this.ofTimes(house, known)),
      this.setups.get([house, known.setups], () => this.ofSetups(house, known)),
      this.whole.get([house, plan], () => this.ofClass(house, known, moves)),
    ];
    return this.all.get([house, ...plan.items.map(({ id }) => id), ...batches], () =>
      inOrder(house.rules, plan.items, batches),
    );
  }

  private ofItem(house: House, { frame, plan }: KnownPlan, { item, move }: PlacedMove): Batch {
    return this.items.get(item.id, [house, frame, item, move], () => {
      const small = fewItems(frame, plan, [item]);
      const moves = placedMoves(small, undefined);
      return batchOf(house.reading.item, new ScopedContext("item", { plan: small, moves, claims: this.claims }));
    });
  }

  private ofChange(house: House, { frame, plan }: KnownPlan, items: readonly PlanItem[]): Batch {
    const item = items.at(-1);
    const known = items.map((one) => (one.kind === "move" ? moveOf(plan, one) : undefined));
    return this.changes.get(item?.id ?? "", [house, frame, ...items, ...known], () => {
      const small = fewItems(frame, plan, items);
      const { rows } = classClock(small);
      const ctx = new ScopedContext("change", {
        ...{ plan: small, moves: placedMoves(small, rows), claims: this.claims },
        steps: () => walkSetups(small).filter((step) => step.item === item),
      });
      return batchOf(house.reading.change, ctx, item?.id);
    });
  }

  private ofVoice(house: House, { frame, plan, voice }: KnownPlan, at: VoiceAt): Batch {
    const { placed, before } = at;
    const around = voice ? [voice.spans[at.n], voice.spans[at.n + 1]] : [];
    const reads = [placed, before].flatMap((one) => [one?.item, one?.move, one?.row]);
    return this.voices.get(placed.item.id, [house, frame, ...reads, ...around], () => {
      const moves = before ? [before, placed] : [placed];
      const track = {
        ...NOTHING_SAID,
        cues: around.flatMap((span) => span?.cues ?? []),
        dropped: around.flatMap((span) => span?.dropped ?? []),
      };
      const small = fewItems(
        frame,
        plan,
        moves.map(({ item }) => item),
      );
      const given = { plan: small, moves, claims: this.claims, track: () => track };
      return batchOf(house.reading.voice, new ScopedContext("voice", given), placed.item.id);
    });
  }

  private ofTimes(house: House, { times: plan, clock, balance }: KnownPlan): Batch {
    const ctx = new ScopedContext("times", {
      ...{ plan, ...clock, moves: placedMoves(plan, clock.rows), claims: this.claims },
      balance: () => balance,
      steps: () => walkSetups(plan),
    });
    return batchOf(house.reading.times, ctx);
  }

  private ofSetups(house: House, { setups: plan }: KnownPlan): Batch {
    const given = { plan, moves: placedMoves(plan, undefined), claims: this.claims, steps: () => walkSetups(plan) };
    return batchOf(house.reading.setups, new ScopedContext("setups", given));
  }

  private ofClass(house: House, { plan, clock, balance, voice }: KnownPlan, moves: readonly PlacedMove[]): Batch {
    const ctx = new ScopedContext("class", {
      ...{ plan, ...clock, moves, claims: this.claims },
      balance: () => balance,
      steps: () => walkSetups(plan),
      track: () => voice?.track ?? NOTHING_SAID,
    });
    return batchOf(house.reading.class, ctx);
  }

  private readonly claims = (line: ScriptLine): readonly Claim[] => {
    const known = this.read.get(line) ?? claimsIn(line.text);
    this.read.set(line, known);
    return known;
  };
}

interface VoiceAt {
  readonly placed: PlacedMove;
  readonly before: PlacedMove | undefined;
  /** Place among the moves. */
  readonly n: number;
}

/** For each move item what stands between the last move before it whose set-up is known and itself, both included. */
function changesOf(plan: Plan): PlanItem[][] {
  let from = 0;
  return plan.items.flatMap((item, i): PlanItem[][] => {
    if (item.kind !== "move") return [];
    const items = plan.items.slice(from, i + 1);
    if (moveOf(plan, item)) from = i;
    return [items];
  });
}

function fewItems(frame: Plan, { moves }: Plan, items: readonly PlanItem[]): Plan {
  const used = items.flatMap((item): [string, Plan["moves"][string]][] => {
    const move = item.kind === "move" ? moveOf({ ...frame, moves }, item as MoveItem) : undefined;
    return move && item.kind === "move" ? [[item.move, move]] : [];
  });
  return { ...frame, moves: Object.fromEntries(used), items: [...items] };
}
