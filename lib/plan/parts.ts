/**
 * Splits a plan into the parts that results are worked out from. A part stays the same value while nothing in it changes: a
 * letter in a script leaves the times the same, a time leaves the set-ups the same, the title leaves all of them the same.
 */
import { Kept, KeptEach } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { CUE_KINDS, type CueKind, type MoveItem, type Plan, type PlanItem, type ScriptLine } from "#lib/plan/schema.ts";
import { hasLineOf } from "./lookup.ts";

export interface PlanParts {
  /** Everything but title and notes, which no result depends on. */
  readonly plan: Plan;
  /** Head and machines only: no moves, no items. */
  readonly frame: Plan;
  /** Without the words of scripts and pauses. */
  readonly times: Plan;
  /** How each item is set up, without words and times. */
  readonly setups: Plan;
  /**
   * The same, with the lines that speak of care (safety, easier, breath) and one placeholder line for each other kind of
   * line that has words in the script.
   */
  readonly kinds: Plan;
  /** Each item with its own times and, of its words, those that may tell of a change: see `TELL_CHANGES`. */
  readonly told: readonly PlanItem[];
}

/** One item, split into those parts. */
interface ItemParts {
  readonly timed: PlanItem;
  readonly setUp: PlanItem;
  readonly kinds: PlanItem;
  readonly told: PlanItem;
}

const HEAD = [
  "format",
  "lengthSeconds",
  "theme",
  "level",
  "expected",
  "openingSeconds",
  "closingSeconds",
  "headsUpSeconds",
  "countInSeconds",
  "gridSeconds",
  "people",
  "speech",
  "equipment",
] as const satisfies readonly (keyof Plan)[];

/** Splits one state of a plan after another. */
export class PartsReader {
  private readonly frame = new Kept<Plan>();
  private readonly items = new KeptEach<ItemParts>();
  private readonly whole = new WholePlan();
  private readonly times = new WholePlan();
  private readonly setups = new WholePlan();
  private readonly kinds = new WholePlan();

  read(plan: Plan): PlanParts {
    const frame = this.frame.get(
      HEAD.map((key) => plan[key]),
      () => ({ ...pick(plan), title: "", moves: {}, items: [] }),
    );
    this.items.round();
    const items = plan.items.map((item) => this.items.get(item.id, [item], (was) => partsOf(item, was)));
    const { moves } = plan;
    return {
      frame,
      plan: this.whole.of(frame, moves, plan.items),
      times: this.times.of(
        frame,
        moves,
        items.map(({ timed }) => timed),
      ),
      setups: this.setups.of(
        frame,
        moves,
        items.map(({ setUp }) => setUp),
      ),
      kinds: this.kinds.of(
        frame,
        moves,
        items.map(({ kinds }) => kinds),
      ),
      told: items.map(({ told }) => told),
    };
  }
}

function partsOf(item: PlanItem, was: ItemParts | undefined): ItemParts {
  const timed = equalOr(was?.timed, withoutWords(item));
  const setUp = equalOr(was?.setUp, withoutTimes(timed));
  const kinds = equalOr(was?.kinds, withKinds(setUp, item));
  return { timed, setUp, kinds, told: equalOr(was?.told, withTold(timed, item)) };
}

/** A frame with moves and items, the same plan value while they are the same. */
class WholePlan {
  private readonly plan = new Kept<Plan>();

  of(frame: Plan, moves: Plan["moves"], items: readonly PlanItem[]): Plan {
    return this.plan.get([frame, moves, ...items], () => ({ ...frame, moves, items: [...items] }));
  }
}

const pick = (plan: Plan): Pick<Plan, (typeof HEAD)[number]> =>
  Object.fromEntries(HEAD.flatMap((key) => (plan[key] === undefined ? [] : [[key, plan[key]]]))) as Pick<
    Plan,
    (typeof HEAD)[number]
  >;

function withoutWords(item: PlanItem): PlanItem {
  if (item.kind === "heading") return item;
  if (item.kind === "pause") return { id: item.id, kind: item.kind, seconds: item.seconds };
  const { script: _script, ...rest } = item;
  return rest;
}

function withoutTimes(item: PlanItem): PlanItem {
  if (item.kind !== "move") return item;
  const { locked: _locked, range: _range, transitionSeconds: _planned, ...rest } = item;
  return { ...rest, seconds: 1 } satisfies MoveItem;
}

function withKinds(setUp: PlanItem, item: PlanItem): PlanItem {
  if (setUp.kind !== "move" || item.kind !== "move") return setUp;
  const script = CUE_KINDS.flatMap((kind): ScriptLine[] => {
    if (SAY_CARE.includes(kind)) return (item.script ?? []).filter((line) => line.kind === kind).map(wordsOf);
    return hasLineOf(item, kind) ? [{ kind, text: "…" }] : [];
  });
  return { ...setUp, script };
}

/** Rules about care read what these say. */
const SAY_CARE: readonly CueKind[] = ["safety", "easier", "breath"];

/** Lines before the start of the work, by kind. Others keep their places, without words. */
const TELL_CHANGES: readonly CueKind[] = ["setup", "safety", "start"];

function withTold(timed: PlanItem, item: PlanItem): PlanItem {
  if (timed.kind !== "move" || item.kind !== "move") return item;
  const script = item.script?.map((line) => (TELL_CHANGES.includes(line.kind) ? line : WORDLESS[line.kind]));
  return script ? { ...timed, script } : timed;
}

const WORDLESS = Object.fromEntries(CUE_KINDS.map((kind) => [kind, { kind, text: "…" }])) as Readonly<
  Record<CueKind, ScriptLine>
>;

const wordsOf = perValue(({ kind, text }: ScriptLine): ScriptLine => ({ kind, text }));

/** The old value when the new one equals it. */
const equalOr = <T>(was: T | undefined, now: T): T =>
  was !== undefined && JSON.stringify(was) === JSON.stringify(now) ? was : now;
