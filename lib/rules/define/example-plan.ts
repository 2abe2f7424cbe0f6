/** A small builder of plans for the rules' examples. Whatever an example leaves out is right. */
import type { Move, MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";

/** An invented room with four light and two heavy springs. */
export const exampleEquipment: Plan["equipment"] = {
  name: "Example room",
  carriageTravelMm: 1000,
  springs: [
    { id: "light", label: "light", count: 4, stiffnessNPerMm: 0.12, preloadN: 10 },
    { id: "heavy", label: "heavy", count: 2, stiffnessNPerMm: 0.3, preloadN: 20 },
  ],
};

const base: Move = {
  name: "Squat",
  station: "carriage",
  position: "standing",
  facing: "front",
  hands: "free",
  feet: "carriage",
  sides: "both",
  pattern: "squat",
  muscles: { quadriceps: 1, glutes: 0.5 },
  resistance: "springs",
  tempo: { outSeconds: 3, backSeconds: 2 },
};

/** The moves that examples use; override them with `moves` in `examplePlan`. */
export const exampleMoves = {
  squat: base,
  row: {
    ...base,
    name: "Kneeling row",
    position: "kneeling",
    facing: "back",
    hands: "one-handle",
    sides: "each",
    pattern: "pull",
    muscles: { "upper-back": 1, biceps: 0.5 },
  },
  press: {
    ...base,
    name: "Chest press",
    position: "kneeling",
    hands: "handles",
    pattern: "push",
    muscles: { chest: 1, triceps: 0.5 },
  },
  plank: {
    ...base,
    name: "Plank hold",
    position: "plank",
    hands: "front-bars",
    pattern: "plank",
    muscles: { abdominals: 1 },
    tempo: { holdSeconds: true },
    cautions: ["wrist-load"],
  },
} satisfies Record<string, Move>;

/** Every line that a move item needs, safety and easier lines included. */
export const fullScript: readonly ScriptLine[] = [
  { kind: "setup", text: "{springs}, here in the middle." },
  { kind: "breath", text: "Breathe out as you push." },
  { kind: "safety", text: "Rest your sore wrists on fists, and stay with the carriage." },
  { kind: "easier", text: "Stay higher." },
];

/** A move item of 45 s with one light spring and a full script. */
export function exampleMove(id: string, changes: Partial<MoveItem> = {}): MoveItem {
  return {
    id,
    kind: "move",
    move: "squat",
    side: "both",
    seconds: 45,
    springs: { light: 1 },
    script: [...fullScript],
    ...changes,
  };
}

/** A left and a right item of the example row. */
export function bothSides(id: string, left: Partial<MoveItem> = {}, right: Partial<MoveItem> = {}): MoveItem[] {
  return [
    exampleMove(`${id}-left`, { move: "row", side: "left", ...left }),
    exampleMove(`${id}-right`, { move: "row", side: "right", ...right }),
  ];
}

/** A plan of the given items. Its length is 25 minutes unless `changes` says otherwise. */
export function examplePlan(items: readonly PlanItem[], changes: Partial<Plan> = {}): Plan {
  return {
    format: "springline.plan/1",
    title: "Example class",
    lengthSeconds: 1500,
    equipment: exampleEquipment,
    moves: exampleMoves,
    items: [...items],
    ...changes,
  };
}
