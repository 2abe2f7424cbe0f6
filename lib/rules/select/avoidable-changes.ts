/**
 * Where springs are changed for one move or pair and then changed back: could the springs from before stay on? With a
 * cable in the hand, sitting further from its anchor makes up for a lighter spring.
 */
import { forceN, loadRows, springItemBefore, travelMm, worksSprings } from "#lib/load/load.ts";
import { moveOf, own } from "#lib/plan/lookup.ts";
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { changeBetween, type Setup, springsDiffer } from "#lib/transitions/transitions.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";

export interface AvoidableChange {
  /** The move, or both sides of it. */
  readonly items: readonly MoveItem[];
  readonly springs: Setup["springs"];
  /** Where to sit with them for the same load, mm from the usual place; null where people stay as they are. */
  readonly offsetMm: number | null;
  /** Further (above 0) or nearer than the move before, mm. */
  readonly movedMm: number;
  /** Seconds of changes it saves, by the estimates. */
  readonly savedSeconds: number;
}

export interface KeptLimits {
  readonly maxOffsetMm: number;
  readonly maxLoadDifferenceShare: number;
}

/** A coach says "eight centimetres", not "83 mm". */
const OFFSET_STEP_MM = 10;

export function avoidableChanges(plan: Plan, steps: readonly SetupStep[], limits: KeptLimits): AvoidableChange[] {
  const detours = steps.flatMap((_, i) => detourAt(steps, i) ?? []);
  if (detours.length === 0) return [];
  const offsets = new Map(loadRows(plan).map((row) => [row.item, row.offsetToMatchPrevious]));
  return detours.flatMap((detour) => {
    const kept = keep(plan, detour, offsets.get(detour.run[0].item.id) ?? null, limits);
    return kept ? [{ ...kept, items: detour.run.map(({ item }) => item), savedSeconds: savedBy(plan, detour) }] : [];
  });
}

interface Detour {
  readonly before: NonNullable<SetupStep["before"]>;
  readonly run: readonly [SetupStep, ...SetupStep[]];
  readonly after: SetupStep;
}

/** Springs change for step `i`, or for both its sides, and back again. Pauses leave time to change, so they rule it out. */
function detourAt(steps: readonly SetupStep[], i: number): Detour | null {
  const first = steps[i];
  const second = steps[i + 1];
  if (!first?.before || !first.actions.carriageHome || !second) return null;
  const isPair = !second.actions.carriageHome && second.item.move === first.item.move;
  const run: [SetupStep, ...SetupStep[]] = isPair ? [first, second] : [first];
  const after = isPair ? steps[i + 2] : second;
  if (!after?.actions.carriageHome || springsDiffer(first.before.setup.springs, after.to.springs)) return null;
  if ([...run, after].some((step) => step.pauses.length > 0)) return null;
  return { before: first.before, run, after };
}

function keep(plan: Plan, { before, run }: Detour, offsetMm: number | null, limits: KeptLimits) {
  const { springs } = before.setup;
  const { item, to } = run[0];
  const move = moveOf(plan, item);
  if (!move || !takes(move, springs)) return null;
  const now = before.item.offsetMm ?? 0;
  if (holdsCable(to) && worksSprings(move)) {
    if (offsetMm === null || springItemBefore(plan, item.id)?.id !== before.item.id) return null;
    const rounded = Math.round(offsetMm / OFFSET_STEP_MM) * OFFSET_STEP_MM;
    if (Math.abs(rounded) > limits.maxOffsetMm || isSlack(plan, move, springs, rounded)) return null;
    return { springs, offsetMm: rounded, movedMm: rounded - now };
  }
  return suits(plan, { item, move, springs, limits }) ? { springs, offsetMm: null, movedMm: 0 } : null;
}

/** Whether the start is so near the anchor that the cable hangs loose. */
const isSlack = (plan: Plan, move: Move, springs: Setup["springs"], offsetMm: number): boolean =>
  forceN(plan.equipment, springs, { xMm: travelMm(plan, move)[0], offsetMm }) <= 0;

const holdsCable = ({ hands, feet }: Setup): boolean =>
  hands === "handles" || hands === "handles-crossed" || hands === "one-handle" || feet === "cable-strap";

/** Whether the springs are within the move's range in the library. False for a move without a range. */
function takes({ springs: range }: Move, springs: Setup["springs"]): boolean {
  if (!range?.max && !range?.min) return false;
  const ids = [...Object.keys(range.min ?? {}), ...Object.keys(range.max ?? {}), ...Object.keys(springs)];
  return ids.every((id) => {
    const count = own(springs, id) ?? 0;
    return count >= (own(range.min, id) ?? 0) && count <= (own(range.max, id) ?? Number.POSITIVE_INFINITY);
  });
}

/**
 * Whether the load is what the library asks for and near the chosen one; a choice outside the move's range does not
 * count.
 */
function suits(
  plan: Plan,
  { item, move, springs, limits }: { item: MoveItem; move: Move; springs: Setup["springs"]; limits: KeptLimits },
): boolean {
  const [fromMm, toMm] = travelMm(plan, move);
  const load = (of: Setup["springs"]) =>
    forceN(plan.equipment, of, { xMm: (fromMm + toMm) / 2, offsetMm: item.offsetMm ?? 0 });
  const [least, most] = move.loadN ?? [0, Number.POSITIVE_INFINITY];
  const isAskedFor = (newtons: number) => newtons >= least && newtons <= most;
  if (!isAskedFor(load(springs))) return false;
  const chosen = load(item.springs);
  if (!takes(move, item.springs) || !isAskedFor(chosen)) return true;
  return Math.abs(load(springs) - chosen) <= limits.maxLoadDifferenceShare * chosen;
}

function savedBy(plan: Plan, { before, run, after }: Detour): number {
  const { springs } = before.setup;
  const seconds = (setups: readonly Setup[]) =>
    setups.reduce(
      (sum, setup, i) => sum + (i === 0 ? 0 : changeBetween(plan, setups[i - 1] ?? null, setup).estimate),
      0,
    );
  const chain = (change: (setup: Setup) => Setup) => [before.setup, ...run.map(({ to }) => change(to)), after.to];
  return seconds(chain((setup) => setup)) - seconds(chain((setup) => ({ ...setup, springs })));
}
