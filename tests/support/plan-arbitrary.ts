/** Random plans for property tests: valid ones of every shape the format allows, and ones broken in small ways. */
import fc from "fast-check";
import {
  ACTIONS,
  CUE_KINDS,
  EXPECTED_CAUTIONS,
  FACINGS,
  FEET,
  GROUPS,
  HANDS,
  ITEM_SIDES,
  LEVELS,
  LIVE_FIELDS,
  MOVE_CAUTIONS,
  MOVE_SIDES,
  type Move,
  PATTERNS,
  type Plan,
  type PlanItem,
  POSES,
  POSITIONS,
  RESISTANCES,
  type ScriptLine,
  SPINE_DIRECTIONS,
  STATIONS,
} from "#lib/plan/schema.ts";
import { escapeScriptText } from "#lib/plan/script-text.ts";
import { ruleById } from "#lib/rules/registry.ts";

type Model = Record<string, fc.Arbitrary<unknown>>;
type ValueOf<A> = A extends fc.Arbitrary<infer V> ? V : never;
type Optional<T extends Model, K extends keyof T> = { [P in K]: ValueOf<T[P]> } & {
  [P in Exclude<keyof T, K>]?: ValueOf<T[P]>;
};

/** A record with only some required keys. */
function optional<T extends Model, K extends string & keyof T>(
  model: T,
  requiredKeys: K[],
): fc.Arbitrary<Optional<T, K>> {
  return fc.record<Record<string, unknown>>(model, { requiredKeys }) as unknown as fc.Arbitrary<Optional<T, K>>;
}

/** Multiples of a half, so that sums are exact and can be compared. */
const half = (min: number, max: number) => fc.integer({ min: min * 2, max: max * 2 }).map((n) => n / 2);
const words = (max: number, min = 0) => fc.string({ minLength: min, maxLength: max, unit: "grapheme" });
const id = fc.stringMatching(/^[a-z0-9][a-z0-9-]{0,8}$/);
/** Valid ids that every object inherits or that look like numbers, on which maps fail. */
const trickyId = fc.oneof({ weight: 8, arbitrary: id }, fc.constantFrom("constructor", "0", "10", "7"));
const ids = (min: number, max: number) => fc.uniqueArray(trickyId, { minLength: min, maxLength: max });
const upwards = (value: fc.Arbitrary<number>) =>
  fc.tuple(value, value).map(([a, b]): [number, number] => (a <= b ? [a, b] : [b, a]));

const scriptLine: fc.Arbitrary<ScriptLine> = optional(
  {
    kind: fc.constantFrom(...CUE_KINDS),
    text: fc
      .array(
        fc.oneof(
          words(12, 1).map(escapeScriptText),
          fc.constantFrom(...LIVE_FIELDS).map((f) => `{${f}}`),
          fc.constantFrom("{{", "}", "{{next-move}", " "),
        ),
        { minLength: 1, maxLength: 5 },
      )
      .map((parts) => parts.join("")),
    at: fc.oneof(fc.record({ afterSeconds: half(0, 200) }), fc.record({ leftSeconds: half(0, 200) })),
  },
  ["kind", "text"],
);

const tempo: fc.Arbitrary<Move["tempo"]> = fc.oneof(
  optional(
    { outSeconds: half(1, 5), outHoldSeconds: half(0, 3), backSeconds: half(1, 5), backHoldSeconds: half(0, 3) },
    ["outSeconds", "backSeconds"],
  ),
  fc.constant({ holdSeconds: true as const }),
);

const shares = fc.dictionary(fc.constantFrom(...GROUPS), fc.constantFrom(0, 0.25, 0.5, 1), {
  maxKeys: 4,
  noNullPrototype: true,
});

function counts(springIds: readonly string[]): fc.Arbitrary<Record<string, number>> {
  return fc
    .subarray([...springIds])
    .chain((some) => fc.tuple(...some.map((s) => fc.tuple(fc.constant(s), fc.nat(5)))))
    .map((entries) => Object.fromEntries(entries));
}

function move(springIds: readonly string[]): fc.Arbitrary<Move> {
  return optional(
    {
      name: words(20, 1),
      station: fc.constantFrom(...STATIONS),
      position: fc.constantFrom(...POSITIONS),
      facing: fc.constantFrom(...FACINGS),
      hands: fc.constantFrom(...HANDS),
      feet: fc.constantFrom(...FEET),
      sides: fc.constantFrom(...MOVE_SIDES),
      pattern: fc.constantFrom(...PATTERNS),
      muscles: shares,
      spine: fc.subarray([...SPINE_DIRECTIONS]),
      resistance: fc.constantFrom(...RESISTANCES),
      loadN: upwards(half(0, 300)),
      springs: optional({ min: counts(springIds), max: counts(springIds) }, []),
      travelMm: upwards(fc.nat(900)),
      tempo,
      exhaleOn: fc.constantFrom("out" as const, "back" as const),
      met: half(1, 9),
      cautions: fc.subarray([...MOVE_CAUTIONS]),
      easier: fc.array(words(20, 1), { maxLength: 2 }),
      harder: fc.array(words(20, 1), { maxLength: 2 }),
      seconds: upwards(half(1, 200)),
      handsShare: fc.record({ pose: fc.constantFrom(...POSES) }),
    },
    ["name", "station", "position", "facing", "hands", "feet", "sides", "pattern", "muscles", "resistance", "tempo"],
  );
}

function item(itemId: string, all: readonly string[], moveIds: readonly string[], springIds: readonly string[]) {
  const fixed = { id: fc.constant(itemId) };
  const heading = fc.record({ ...fixed, kind: fc.constant("heading" as const), title: words(20) });
  const pause = optional({ ...fixed, kind: fc.constant("pause" as const), seconds: half(0, 60), text: words(20) }, [
    "id",
    "kind",
    "seconds",
  ]);
  if (moveIds.length === 0) return fc.oneof(heading, pause);
  const performed = optional(
    {
      ...fixed,
      kind: fc.constant("move" as const),
      move: fc.constantFrom(...moveIds),
      side: fc.constantFrom(...ITEM_SIDES),
      seconds: half(1, 200),
      locked: fc.boolean(),
      range: upwards(half(1, 200)),
      springs: counts(springIds),
      offsetMm: fc.integer({ min: -400, max: 400 }),
      facing: fc.constantFrom(...FACINGS),
      transitionSeconds: half(0, 60),
      keep: id,
      after: fc.subarray([...all], { maxLength: Math.min(2, all.length) }),
      script: fc.array(scriptLine, { maxLength: 4 }),
    },
    ["id", "kind", "move", "side", "seconds", "springs"],
  );
  return fc.oneof({ weight: 6, arbitrary: performed }, heading, pause);
}

const standards: fc.Arbitrary<NonNullable<Plan["standards"]>> = fc.dictionary(
  fc.constantFrom("total-length", "missing-cue", "uneven-sides", "partial-rep"),
  optional(
    {
      level: fc.constantFrom("must" as const, "look" as const, "info" as const, "off" as const),
      limits: fc.constant({}),
    },
    [],
  ),
  { maxKeys: 3, noNullPrototype: true },
);

function planOf(itemIds: string[], moveIds: string[], springIds: string[]): fc.Arbitrary<Plan> {
  const spring = (springId: string) =>
    fc.record({
      id: fc.constant(springId),
      label: words(10, 1),
      count: fc.nat(4),
      stiffnessNPerMm: half(0, 3),
      preloadN: half(0, 50),
    });
  return optional(
    {
      format: fc.constant("springline.plan/1" as const),
      title: words(30),
      lengthSeconds: fc.integer({ min: 60, max: 14400 }),
      theme: optional({ name: words(20, 1), shares }, ["name"]),
      level: fc.constantFrom(...LEVELS),
      expected: fc.uniqueArray(fc.constantFrom(...EXPECTED_CAUTIONS), { maxLength: 5 }),
      openingSeconds: half(0, 300),
      closingSeconds: half(0, 300),
      headsUpSeconds: half(0, 60),
      countInSeconds: half(0, 10),
      gridSeconds: fc.integer({ min: 1, max: 30 }),
      people: fc.integer({ min: 1, max: 60 }),
      speech: optional({ syllablesPerSecond: half(1, 9), pauseSeconds: half(0, 2) }, []),
      equipment: optional(
        {
          name: words(20, 1),
          carriageTravelMm: fc.integer({ min: 1, max: 2000 }),
          springs: fc.tuple(...springIds.map(spring)),
          actionSeconds: fc.dictionary(fc.constantFrom("base", ...ACTIONS), half(0, 10), {
            maxKeys: 5,
            noNullPrototype: true,
          }),
          spreadShare: fc.integer({ min: 0, max: 10 }).map((tenths) => tenths / 10),
        },
        ["name", "carriageTravelMm", "springs"],
      ),
      standards,
      moves: fc
        .tuple(...moveIds.map(() => move(springIds)))
        .map((list) => Object.fromEntries(moveIds.map((m, i) => [m, list[i]]))),
      items: fc.tuple(...itemIds.map((i) => item(i, itemIds, moveIds, springIds))),
      notes: words(40),
    },
    ["format", "title", "lengthSeconds", "equipment", "moves", "items"],
  ) as fc.Arbitrary<Plan>;
}

/** Valid plans. Optional keys may be missing; texts are any well-formed Unicode; ids are sometimes tricky. */
export const validPlan: fc.Arbitrary<Plan> = fc
  .tuple(ids(0, 8), ids(0, 4), ids(0, 4))
  .chain(([itemIds, moveIds, springIds]) => planOf(itemIds, moveIds, springIds))
  // Random records have no prototype; plans read from JSON have.
  .map((plan) => structuredClone(plan));

const oddNumber = fc.constantFrom(0, -1, -1e9, 1e9, 1e308, Number.NaN, Number.POSITIVE_INFINITY, 0.1);

type Harm = (plan: Plan, n: number, odd: number) => Plan;
const onItem =
  (change: (item: PlanItem, odd: number) => PlanItem): Harm =>
  (plan, n, odd) => ({
    ...plan,
    items: plan.items.map((it, i) => (i === n % plan.items.length ? change(it, odd) : it)),
  });

/** What a half-merged document, or one written by a faulty program, can look like when it is read. */
const harms: readonly Harm[] = [
  (plan) => ({ ...plan, moves: {} }),
  (plan) => ({ ...plan, equipment: { ...plan.equipment, springs: [] } }),
  (plan, n) => ({ ...plan, items: [...plan.items, ...plan.items.slice(0, n)] }),
  (plan, _n, odd) => ({ ...plan, lengthSeconds: odd, gridSeconds: odd, headsUpSeconds: odd, openingSeconds: odd }),
  (plan, _n, odd) => ({ ...plan, equipment: { ...plan.equipment, actionSeconds: { base: odd, springOn: odd } } }),
  (plan, _n, odd) => ({ ...plan, people: odd, equipment: { ...plan.equipment, spreadShare: odd } }),
  (plan) => ({
    ...plan,
    standards: Object.fromEntries(["total-length", "missing-cue"].map((r) => [r, { limits: { x: 1 } }])),
  }),
  (plan, _n, odd) => ({ ...plan, theme: { name: "", shares: { chest: odd } } }),
  onItem((it, odd) => (it.kind === "heading" ? it : { ...it, seconds: odd })),
  onItem((it, odd) =>
    it.kind === "move" ? { ...it, springs: { constructor: odd, toString: 1 }, range: [odd, 1] } : it,
  ),
  onItem((it, odd) => (it.kind === "move" ? { ...it, move: "", transitionSeconds: odd, offsetMm: odd } : it)),
  onItem((it) => (it.kind === "move" ? { ...it, script: [{ kind: "setup", text: "{nothing} {" }] } : it)),
  (plan, _n, odd) => ({
    ...plan,
    moves: Object.fromEntries(
      Object.entries(plan.moves).map(([k, m]) => [
        k,
        { ...m, tempo: { outSeconds: odd, backSeconds: odd }, seconds: [odd, odd] as [number, number] },
      ]),
    ),
  }),
];

/** Plans of the right shape with wrong contents. */
export const damagedPlan: fc.Arbitrary<Plan> = fc
  .tuple(validPlan, fc.array(fc.tuple(fc.nat(harms.length - 1), fc.nat(20), oddNumber), { minLength: 1, maxLength: 4 }))
  .map(([plan, list]) => list.reduce((p, [h, n, odd]) => harms[h]?.(p, n, odd) ?? p, plan));

/** Guards the generator: a renamed rule would leave its standards behind here. */
export const standardsAreKnown = ["total-length", "missing-cue", "uneven-sides", "partial-rep"].every((r) =>
  ruleById(r),
);
