/**
 * Everything that is worked out from a plan, in the page and on the server: clock, balance, talk, cue track, findings. Each
 * part is worked out on first use, and again only when something that it reads has changed. Changes are told by the identity
 * of the plan's values, which `lib/doc/plan-reader.ts` keeps stable. A plan's values never change in place.
 */
import { type Balance, balance, setupChangeCounts } from "#lib/balance/balance.ts";
import { type ClassClock, classClock } from "#lib/clock/clock.ts";
import { ClockKeeper, type KeptClock } from "#lib/clock/kept-clock.ts";
import { type ClassTalk, classTalk } from "#lib/cues/class-talk.ts";
import { CueTracker } from "#lib/cues/cue-track.ts";
import type { SpanSource } from "#lib/cues/span.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import { Kept } from "#lib/memo/kept.ts";
import { PartsReader, type PlanParts } from "#lib/plan/parts.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { RuleChecker } from "#lib/rules/checker.ts";
import { hasUsableTimes, NOTHING_SAID } from "#lib/rules/context.ts";
import type { AnyRule, Finding } from "#lib/rules/define/types.ts";
import type { KnownParts } from "#lib/rules/known-plan.ts";
import { SyllableCounter } from "#lib/talk/syllables.ts";
import { type ItemTalk, TalkCounter } from "#lib/talk/talk.ts";
import { TellingCounter } from "#lib/talk/telling.ts";
import { type Change, changesInto } from "#lib/transitions/transitions.ts";

export interface PlanAnalysis {
  readonly plan: Plan;
  readonly clock: ClassClock;
  readonly balance: Balance;
  /** Seconds of talk and seconds available, by item id; no entry for an item without words. */
  readonly talk: ReadonlyMap<string, ItemTalk>;
  /** What is said when, as the rules see it, and how much of the class it takes. */
  readonly track: CueTrack;
  readonly classTalk: ClassTalk;
  /** In plan order: see `PlanCheck`. */
  readonly findings: readonly Finding[];
}

/** What is kept between states of a plan. */
class Tools {
  readonly parts = new PartsReader();
  readonly changes = new Kept<ReadonlyMap<string, Change>>();
  readonly clock = new Kept<KeptClock>();
  readonly rows = new ClockKeeper();
  readonly setupChanges = new Kept<Balance["setups"]>();
  readonly balance = new Kept<Balance>();
  private readonly counter = new SyllableCounter();
  readonly telling = new TellingCounter(this.counter);
  readonly talk = new TalkCounter(this.counter);
  readonly tracker = new CueTracker(this.counter);
}

/** For a plan that is analysed again after each change. */
export class PlanAnalyst {
  private readonly tools: Tools;
  private readonly checker: RuleChecker;

  constructor(rules: readonly AnyRule[], tools = new Tools()) {
    this.tools = tools;
    this.checker = new RuleChecker(rules);
  }

  of(plan: Plan): PlanAnalysis {
    return new LazyAnalysis(plan, this.tools, this.checker);
  }

  /** Goes on with other rules in its place. Whatever does not depend on rules stays the same value. */
  withRules(rules: readonly AnyRule[]): PlanAnalyst {
    return new PlanAnalyst(rules, this.tools);
  }
}

class LazyAnalysis implements PlanAnalysis {
  readonly plan: Plan;
  private readonly parts: PlanParts;
  private readonly tools: Tools;
  private readonly checker: RuleChecker;
  private readonly made: { -readonly [Part in Exclude<keyof PlanAnalysis, "plan" | "clock">]?: PlanAnalysis[Part] } & {
    keptClock?: KeptClock;
    spans?: KnownParts["spans"];
  } = {};

  constructor(plan: Plan, tools: Tools, checker: RuleChecker) {
    this.plan = plan;
    this.tools = tools;
    this.checker = checker;
    this.parts = tools.parts.read(plan);
  }

  get clock(): ClassClock {
    return this.keptClock.clock;
  }
  get balance(): Balance {
    const { times, setups } = this.parts;
    this.made.balance ??= this.tools.balance.get([times], () => {
      const changes = this.tools.setupChanges.get([setups], () => setupChangeCounts(setups));
      return balance(times, changes);
    });
    return this.made.balance;
  }
  get talk(): ReadonlyMap<string, ItemTalk> {
    this.made.talk ??= this.tools.talk.byItem(this.source);
    return this.made.talk;
  }
  get classTalk(): ClassTalk {
    this.made.classTalk ??= classTalk(this.track, this.clock.total);
    return this.made.classTalk;
  }
  get track(): CueTrack {
    const { spans, source } = this;
    this.made.track ??= spans ? this.tools.tracker.track(source, spans) : NOTHING_SAID;
    return this.made.track;
  }
  get findings(): readonly Finding[] {
    const { standards } = this.plan;
    const { balance, spans } = this;
    this.made.findings ??= this.checker.findings({ ...this.parts, ...this.keptClock, standards, balance, spans });
    return this.made.findings;
  }

  private get keptClock(): KeptClock {
    this.made.keptClock ??= this.clockNow();
    return this.made.keptClock;
  }

  private clockNow(): KeptClock {
    const { times, setups } = this.parts;
    const tellings = this.tools.telling.of(this.parts);
    return this.tools.clock.get([times, tellings], () => {
      const changes = this.tools.changes.get([setups], () => changesInto(setups));
      return this.tools.rows.keep(classClock(times, changes, tellings));
    });
  }

  private get spans(): KnownParts["spans"] {
    if (this.made.spans === undefined)
      this.made.spans = hasUsableTimes(this.parts.frame, this.clock) ? this.tools.tracker.spans(this.source) : null;
    return this.made.spans;
  }

  private get source(): SpanSource {
    const { frame, times, plan } = this.parts;
    return { frame, times, plan, ...this.keptClock };
  }
}
