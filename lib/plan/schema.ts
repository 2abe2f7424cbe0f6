/**
 * The plan file, format `springline.plan/1`: one zod schema is the type, the parser and the published JSON Schema.
 * Units: seconds, millimetres, newtons, metres, kilograms. Everything here is plain data that any runtime can load.
 */
import * as z from "zod/mini";
import { figureCorrectionSchema } from "./figure-correction.ts";
import { numberFrom, wholeFrom } from "./number-fields.ts";

export const PLAN_FORMAT = "springline.plan/1";

export const GROUPS = [
  "chest",
  "upper-back",
  "shoulders",
  "biceps",
  "triceps",
  "forearms",
  "abdominals",
  "obliques",
  "lower-back",
  "glutes",
  "hamstrings",
  "quadriceps",
  "adductors",
  "abductors",
  "calves",
  "hip-flexors",
] as const;
/** Cautions of a move: what not everybody in the room may be able or allowed to do. */
export const MOVE_CAUTIONS = [
  "wrist-load",
  "kneeling",
  "overhead",
  "loaded-flexion",
  "loaded-rotation",
  "supine",
  "prone",
  "head-down",
  "long-hold",
  "unstable-carriage",
  "single-leg-balance",
] as const;
/** Conditions of people who are expected in the room. */
export const EXPECTED_CAUTIONS = [
  "pregnancy",
  "raised-blood-pressure",
  "bone-loss",
  "wrist-pain",
  "shoulder-pain",
  "knee-pain",
  "back-pain",
  "pelvic-floor",
  "glaucoma",
  "dizziness",
  "recent-surgery",
  "first-class",
] as const;
export const STATIONS = ["front", "carriage", "back", "floor"] as const;
export const POSITIONS = [
  "plank",
  "quadruped",
  "kneeling",
  "seated",
  "supine",
  "prone",
  "side-lying",
  "standing",
  "inverted",
] as const;
/** In a circle, neighbours being a quarter turn apart. */
export const FACINGS = ["front", "right", "back", "left"] as const;
export const HANDS = [
  "free",
  "front-bars",
  "back-bars",
  "front-platform",
  "back-platform",
  "carriage",
  "handles",
  "handles-crossed",
  "one-handle",
] as const;
export const FEET = [
  "free",
  "carriage",
  "front-platform",
  "back-platform",
  "floor",
  "front-strap",
  "back-strap",
  "cable-strap",
] as const;
export const MOVE_SIDES = ["both", "each", "alternating"] as const;
export const ITEM_SIDES = ["left", "right", "both", "alternating"] as const;
export const PATTERNS = [
  "push",
  "pull",
  "squat",
  "hinge",
  "lunge",
  "plank",
  "flexion",
  "rotation",
  "lateral",
  "extension",
  "carry",
] as const;
export const SPINE_DIRECTIONS = ["flexion", "extension", "rotation", "lateral", "neutral-hold"] as const;
export const RESISTANCES = ["springs", "bodyweight", "assisted"] as const;
export const LEVELS = ["first-time", "open", "experienced"] as const;
export const CUE_KINDS = ["setup", "start", "breath", "form", "focus", "easier", "harder", "safety", "crew"] as const;
/** Seconds that a person needs for one action of a change. */
export const ACTIONS = [
  "springOn",
  "springOff",
  "carriageHome",
  "quarterTurn",
  "positionChange",
  "stationChange",
  "handleUp",
  "handleDown",
  "handlesCross",
  "strapOn",
  "strapOff",
  "gripChange",
  "sideChange",
] as const;
/** Poses of the statics table (hand load). */
export const POSES = ["high-plank", "forearm-plank", "knees", "hands-raised", "feet-raised", "push-up-low"] as const;
export const FINDING_LEVELS = ["must", "look", "info"] as const;
export const LIVE_FIELDS = ["next-move", "seconds-left", "minutes-left", "side", "springs", "move"] as const;

export const ID_PATTERN = /^[a-z0-9][a-z0-9-]{0,63}$/;

const id = z.string().check(z.regex(ID_PATTERN));
const text = (max: number) => z.string().check(z.minLength(1), z.maxLength(max));
const seconds = numberFrom(0, 14400);
const workSeconds = numberFrom(1, 14400);
const group = z.enum(GROUPS);
/** Springs of one kind, on a machine and on in a move. */
export const MOST_OF_A_SPRING = 20;
const springCounts = z.record(id, wholeFrom(0, MOST_OF_A_SPRING));
const secondsRange = z
  .tuple([workSeconds, workSeconds])
  .check(z.refine(([a, b]) => a <= b, "should go upwards: the shortest must not be above the longest"));
const ascending = (max: number) =>
  z
    .tuple([numberFrom(0, max), numberFrom(0, max)])
    .check(z.refine(([a, b]) => a <= b, "should go upwards: the first must not be above the second"));

/** When in its item a line is to begin: so many seconds after the work begins, or before it ends. */
export const lineAtSchema = z.union([
  z.strictObject({ afterSeconds: seconds }),
  z.strictObject({ leftSeconds: seconds }),
]);
const scriptLineSchema = z.strictObject({ kind: z.enum(CUE_KINDS), text: text(2000), at: z.optional(lineAtSchema) });

const springSchema = z.strictObject({
  id,
  label: text(60),
  count: wholeFrom(0, MOST_OF_A_SPRING),
  stiffnessNPerMm: numberFrom(0, 100),
  preloadN: numberFrom(0, 5000),
});

export const actionSecondsSchema = z.strictObject({
  base: z.optional(numberFrom(0, 120)),
  ...(Object.fromEntries(ACTIONS.map((a) => [a, z.optional(numberFrom(0, 120))])) as Record<
    (typeof ACTIONS)[number],
    z.ZodMiniOptional<z.ZodMiniNumber>
  >),
});

export const spreadShareSchema = numberFrom(0, 1);

export const equipmentSchema = z.strictObject({
  name: text(120),
  carriageTravelMm: numberFrom(1, 5000),
  springs: z.array(springSchema).check(z.maxLength(20)),
  actionSeconds: z.optional(actionSecondsSchema),
  /** How much people differ in a change: the standard deviation of their seconds, as a share of them. */
  spreadShare: z.optional(spreadShareSchema),
});

const tempoSchema = z.union([
  z.strictObject({
    outSeconds: numberFrom(0.1, 120),
    outHoldSeconds: z.optional(numberFrom(0, 120)),
    backSeconds: numberFrom(0.1, 120),
    backHoldSeconds: z.optional(numberFrom(0, 120)),
  }),
  z.strictObject({ holdSeconds: z.literal(true) }),
]);

export const moveSchema = z.strictObject({
  name: text(120),
  station: z.enum(STATIONS),
  position: z.enum(POSITIONS),
  facing: z.enum(FACINGS),
  hands: z.enum(HANDS),
  feet: z.enum(FEET),
  sides: z.enum(MOVE_SIDES),
  pattern: z.enum(PATTERNS),
  muscles: z.partialRecord(group, numberFrom(0, 1)),
  spine: z.optional(z.array(z.enum(SPINE_DIRECTIONS))),
  resistance: z.enum(RESISTANCES),
  loadN: z.optional(ascending(5000)),
  springs: z.optional(z.strictObject({ min: z.optional(springCounts), max: z.optional(springCounts) })),
  travelMm: z.optional(ascending(5000)),
  tempo: tempoSchema,
  exhaleOn: z.optional(z.enum(["out", "back"])),
  met: z.optional(numberFrom(0.5, 25)),
  cautions: z.optional(z.array(z.enum(MOVE_CAUTIONS))),
  easier: z.optional(z.array(text(500))),
  harder: z.optional(z.array(text(500))),
  seconds: z.optional(secondsRange),
  handsShare: z.optional(z.strictObject({ pose: z.enum(POSES) })),
  /** Where the figure that is worked out from the other fields is wrong. */
  figure: z.optional(figureCorrectionSchema),
});

const headingSchema = z.strictObject({
  id,
  kind: z.literal("heading"),
  title: z.string().check(z.maxLength(200)),
});
const pauseSchema = z.strictObject({
  id,
  kind: z.literal("pause"),
  seconds,
  text: z.optional(z.string().check(z.maxLength(2000))),
});
export const moveItemSchema = z.strictObject({
  id,
  kind: z.literal("move"),
  move: id,
  side: z.enum(ITEM_SIDES),
  seconds: workSeconds,
  locked: z.optional(z.boolean()),
  range: z.optional(secondsRange),
  springs: springCounts,
  offsetMm: z.optional(numberFrom(-2000, 2000)),
  facing: z.optional(z.enum(FACINGS)),
  transitionSeconds: z.optional(seconds),
  keep: z.optional(id),
  after: z.optional(z.array(id)),
  script: z.optional(z.array(scriptLineSchema).check(z.maxLength(200))),
});
export const itemSchema = z.discriminatedUnion("kind", [headingSchema, pauseSchema, moveItemSchema]);

export const standardSchema = z.strictObject({
  level: z.optional(z.enum(["must", "look", "info", "off"])),
  limits: z.optional(z.record(z.string().check(z.minLength(1), z.maxLength(60)), z.unknown())),
});

export const planSchema = z.strictObject({
  format: z.literal(PLAN_FORMAT),
  title: z.string().check(z.maxLength(200)),
  lengthSeconds: wholeFrom(60, 14400),
  theme: z.optional(
    z.strictObject({
      name: text(120),
      shares: z.optional(z.partialRecord(group, numberFrom(0, 1))),
    }),
  ),
  level: z.optional(z.enum(LEVELS)),
  expected: z.optional(z.array(z.enum(EXPECTED_CAUTIONS))),
  openingSeconds: z.optional(seconds),
  closingSeconds: z.optional(seconds),
  headsUpSeconds: z.optional(seconds),
  countInSeconds: z.optional(seconds),
  gridSeconds: z.optional(numberFrom(1, 600)),
  /** How many change their set-up at once. */
  people: z.optional(wholeFrom(1, 60)),
  speech: z.optional(
    z.strictObject({
      syllablesPerSecond: z.optional(numberFrom(0.5, 15)),
      pauseSeconds: z.optional(numberFrom(0, 10)),
    }),
  ),
  equipment: equipmentSchema,
  standards: z.optional(z.record(id, standardSchema)),
  moves: z.record(id, moveSchema),
  items: z.array(itemSchema).check(z.maxLength(2000)),
  /** The authors' working notes: not part of the class, but kept with it. */
  notes: z.optional(z.string().check(z.maxLength(100_000))),
});

export type Plan = z.infer<typeof planSchema>;
export type PlanItem = z.infer<typeof itemSchema>;
export type MoveItem = z.infer<typeof moveItemSchema>;
export type Heading = z.infer<typeof headingSchema>;
export type Pause = z.infer<typeof pauseSchema>;
export type Move = z.infer<typeof moveSchema>;
export type Equipment = z.infer<typeof equipmentSchema>;
export type Spring = z.infer<typeof springSchema>;
export type LineBegin = z.infer<typeof lineAtSchema>;
export type ScriptLine = z.infer<typeof scriptLineSchema>;
export type Standards = NonNullable<Plan["standards"]>;
export type Group = (typeof GROUPS)[number];
export type MoveCaution = (typeof MOVE_CAUTIONS)[number];
export type ExpectedCaution = (typeof EXPECTED_CAUTIONS)[number];
export type SpineDirection = (typeof SPINE_DIRECTIONS)[number];
export type Facing = (typeof FACINGS)[number];
export type ItemSide = (typeof ITEM_SIDES)[number];
export type CueKind = (typeof CUE_KINDS)[number];
export type LiveField = (typeof LIVE_FIELDS)[number];
export type Action = (typeof ACTIONS)[number];
export type FindingLevel = (typeof FINDING_LEVELS)[number];
