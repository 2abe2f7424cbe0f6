/**
 * What a class trains: weighted seconds of each muscle group, left against right, push against pull, the ways the spine
 * bends, the longest stretches without a rest, and the number of changes.
 */
import { perValue } from "#lib/memo/per-value.ts";
import { withoutNoise } from "#lib/numbers/round.ts";
import { isMoveItem, moveOf } from "#lib/plan/lookup.ts";
import {
  GROUPS,
  type Group,
  type Move,
  type MoveItem,
  type Plan,
  SPINE_DIRECTIONS,
  type SpineDirection,
} from "#lib/plan/schema.ts";
import { wristLoad } from "#lib/statics/wrists.ts";
import { type Setup, setupOf, springsDiffer } from "#lib/transitions/transitions.ts";

export interface GroupBalance {
  /** Seconds of work x weight. */
  readonly seconds: number;
  /** Share of the sum over all groups, 0..1. */
  readonly share: number;
  /** The part of `seconds` done on each side; items of side both or alternating count half and half. */
  readonly left: number;
  readonly right: number;
}
export interface WorkRun {
  readonly seconds: number;
  readonly items: readonly string[];
}
export interface Balance {
  /** The groups that the class trains, in the order of GROUPS; others are left out. */
  readonly groups: Readonly<Partial<Record<Group, GroupBalance>>>;
  /** Seconds of work of that pattern. */
  readonly push: number;
  readonly pull: number;
  /** Longest unbroken work of a group at weight 0.5 or more; the earliest of equals. */
  readonly longest: Readonly<Partial<Record<Group, WorkRun>>>;
  /** Seconds of work in which the spine bends that way; a move that names two ways counts for both. */
  readonly spine: Readonly<Partial<Record<SpineDirection, number>>>;
  /** Longest unbroken wrist load on either wrist, by position and hands; the earliest of equals. */
  readonly onWrists: WorkRun | undefined;
  /** Longest unbroken work on the knees (kneeling moves, or moves with the caution `kneeling`). */
  readonly onKnees: WorkRun | undefined;
  /** Between neighbouring move items. */
  readonly setups: { readonly springChanges: number; readonly facingChanges: number; readonly positionChanges: number };
}

/** The share of each group that the class trains, 0..1. */
export const workShares = ({ groups }: Pick<Balance, "groups">): Readonly<Partial<Record<Group, number>>> =>
  mapOf(GROUPS, (group) => groups[group]?.share);

/** The least weight at which a group counts as working, for unbroken work. */
const WORKED = 0.5;

/**
 * Balance of a plan. Items of an unknown move are left out. Seconds keep their decimals, without floating-point noise.
 * `setups` are the plan's own change counts, where already worked out.
 */
export function balance(plan: Plan, setups: Balance["setups"] = setupChangeCounts(plan)): Balance {
  const walk = plan.items
    .filter((item) => item.kind !== "heading")
    .map((item): Walked => (item.kind === "move" ? { item, move: moveOf(plan, item) } : PAUSE));
  const performed = walk.filter((step): step is Performed => step.item !== undefined);
  const sums = groupSums(performed);
  const all = GROUPS.reduce((sum, g) => sum + (sums[g]?.seconds ?? 0), 0);
  return {
    groups: mapOf(GROUPS, (g) => {
      const s = sums[g];
      return s && s.seconds > 0
        ? {
            seconds: withoutNoise(s.seconds),
            share: withoutNoise(s.seconds / all),
            left: withoutNoise(s.left),
            right: withoutNoise(s.right),
          }
        : undefined;
    }),
    push: patternSeconds(performed, "push"),
    pull: patternSeconds(performed, "pull"),
    longest: mapOf(GROUPS, (g) => longestStretch(walk, (move) => (move.muscles[g] ?? 0) >= WORKED)),
    spine: mapOf(SPINE_DIRECTIONS, (way) => spineSeconds(performed, way)),
    onWrists: longestStretch(walk, (move) => wristLoad(move, "both").left > 0),
    onKnees: longestStretch(
      walk,
      (move) => move.position === "kneeling" || move.cautions?.includes("kneeling") === true,
    ),
    setups,
  };
}

interface Performed {
  readonly item: MoveItem;
  readonly move: Move | undefined;
}

/** A move item; a pause has no item. */
interface Walked {
  readonly item: MoveItem | undefined;
  readonly move: Move | undefined;
}
const PAUSE: Walked = { item: undefined, move: undefined };

const weightsOf = perValue(({ muscles }: Move): readonly (readonly [Group, number])[] =>
  GROUPS.flatMap((group) => {
    const weight = muscles[group];
    return weight ? [[group, weight] as const] : [];
  }),
);

function groupSums(performed: readonly Performed[]) {
  const sums: Partial<Record<Group, { seconds: number; left: number; right: number }>> = {};
  for (const { item, move } of performed) {
    for (const [group, weight] of move ? weightsOf(move) : []) {
      const seconds = item.seconds * weight;
      const left = item.side === "left" ? 1 : item.side === "right" ? 0 : 0.5;
      sums[group] ??= { seconds: 0, left: 0, right: 0 };
      const sum = sums[group];
      sum.seconds += seconds;
      sum.left += seconds * left;
      sum.right += seconds * (1 - left);
    }
  }
  return sums;
}

function patternSeconds(performed: readonly Performed[], pattern: Move["pattern"]): number {
  return withoutNoise(
    performed.reduce((sum, { item, move }) => sum + (move?.pattern === pattern ? item.seconds : 0), 0),
  );
}

function spineSeconds(performed: readonly Performed[], way: SpineDirection): number | undefined {
  const going = performed.filter(({ move }) => move?.spine?.includes(way));
  return going.length === 0 ? undefined : withoutNoise(going.reduce((sum, { item }) => sum + item.seconds, 0));
}

/** The longest run of neighbouring moves for which `isWork` holds. A pause breaks a run, a heading does not. */
function longestStretch(walk: readonly Walked[], isWork: (move: Move) => boolean): WorkRun | undefined {
  // Kept to plain numbers, because it runs for every muscle group at every key press.
  let [seconds, from] = [0, 0];
  let best = { seconds: 0, from: 0, to: 0 };
  for (let i = 0; i < walk.length; i++) {
    const { item, move } = walk[i] ?? PAUSE;
    if (item && move && isWork(move)) seconds += item.seconds;
    else [seconds, from] = [0, i + 1];
    if (seconds > best.seconds) best = { seconds, from, to: i + 1 };
  }
  if (best.seconds <= 0) return undefined;
  const items = walk.slice(best.from, best.to).flatMap(({ item }) => (item ? [item.id] : []));
  return { seconds: withoutNoise(best.seconds), items };
}

export function setupChangeCounts(plan: Plan): Balance["setups"] {
  const changes = { springChanges: 0, facingChanges: 0, positionChanges: 0 };
  let last: Setup | null = null;
  for (const item of plan.items.filter(isMoveItem)) {
    const setup = setupOf(plan, item);
    if (last && setup) {
      changes.springChanges += Number(springsDiffer(last.springs, setup.springs));
      changes.facingChanges += Number(last.facing !== setup.facing);
      changes.positionChanges += Number(last.position !== setup.position);
    }
    last = setup ?? last;
  }
  return changes;
}

function mapOf<K extends string, T>(keys: readonly K[], make: (key: K) => T | undefined): Partial<Record<K, T>> {
  const map: Partial<Record<K, T>> = {};
  for (const key of keys) {
    const value = make(key);
    if (value !== undefined) map[key] = value;
  }
  return map;
}

/** Removes floating-point noise: 13.500000000000002 s is 13.5 s. */
