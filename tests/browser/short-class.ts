/** A five-minute class as a plan file. Its left row is 15 s short of the right one: one thing that must be fixed. */
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";

const ROW: Move = {
  name: "Seated row",
  station: "carriage",
  position: "seated",
  facing: "back",
  hands: "handles",
  feet: "front-platform",
  sides: "each",
  pattern: "pull",
  muscles: { "upper-back": 1, biceps: 0.5 },
  resistance: "springs",
  tempo: { outSeconds: 2, backSeconds: 2 },
  exhaleOn: "out",
};
const PRESS: Move = {
  ...ROW,
  name: "Seated chest press",
  facing: "front",
  sides: "both",
  pattern: "push",
  muscles: { chest: 1, triceps: 0.5 },
};

const item = (id: string, move: string, side: MoveItem["side"], seconds: number, transition?: number): MoveItem => ({
  id,
  kind: "move",
  move,
  side,
  seconds,
  springs: { light: 1 },
  ...(transition === undefined ? {} : { transitionSeconds: transition }),
  script: [
    { kind: "setup", text: "One light spring, sit tall and take both handles." },
    { kind: "start", text: "And begin." },
    { kind: "breath", text: "Breathe out as you pull, in as you let go." },
  ],
});

/** 30 s opening + 60 + (10 + 60) + (10 + 60) + 70 s closing = 300 s once the left side has its 60 s. */
export const SHORT_CLASS: Plan = {
  format: "springline.plan/1",
  title: "Five quiet minutes",
  lengthSeconds: 300,
  openingSeconds: 30,
  closingSeconds: 70,
  equipment: {
    name: "Borrowed bench",
    carriageTravelMm: 900,
    springs: [{ id: "light", label: "light", count: 4, stiffnessNPerMm: 0.1, preloadN: 12 }],
  },
  moves: { "seated-row": ROW, "seated-chest-press": PRESS },
  items: [
    { id: "pulls", kind: "heading", title: "Pull and press" },
    item("row-right", "seated-row", "right", 60),
    item("row-left", "seated-row", "left", 45, 10),
    item("press", "seated-chest-press", "both", 60, 10),
  ],
};
