/** A class in which people turn round between every two moves, with one pair. No seconds are planned for changes. */
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";

const PRESS: Move = {
  name: "Kneeling press",
  station: "carriage",
  position: "kneeling",
  facing: "front",
  hands: "handles",
  feet: "free",
  sides: "both",
  pattern: "push",
  muscles: { chest: 1, triceps: 0.5 },
  resistance: "springs",
  tempo: { outSeconds: 2, backSeconds: 2 },
  exhaleOn: "out",
  seconds: [30, 90],
};
const PULL: Move = {
  ...PRESS,
  name: "Kneeling pull",
  facing: "back",
  pattern: "pull",
  muscles: { "upper-back": 1, biceps: 0.5 },
};
const REACH: Move = {
  ...PRESS,
  name: "Side reach",
  position: "quadruped",
  hands: "carriage",
  sides: "each",
  pattern: "lateral",
  muscles: { obliques: 1 },
};

function item(id: string, move: string, more: Partial<MoveItem> = {}): MoveItem {
  const springs = move === "pull" ? { light: 2 } : { light: 1 };
  const script: MoveItem["script"] = [{ kind: "setup", text: "{springs}, kneel tall in the middle." }];
  return { id, kind: "move", move, side: "both", seconds: 60, springs, script, ...more };
}

/**
 * 60 s opening + 4 x 60 + 60 + 45 s of work + 60 s closing. Changes, by the default timings: one spring on 3 s or off
 * 2 s, carriage home 2 s, two quarter turns 3 s, base 2 s, so 10 s to a pull and 9 s back to a press; 14 s to the first
 * reach and 6 s to its other side. Each set-up takes 2 s to tell, so a change lasts at least that.
 */
export const TURNING_CLASS: Plan = {
  format: "springline.plan/1",
  title: "Turning about",
  lengthSeconds: 600,
  openingSeconds: 60,
  closingSeconds: 60,
  equipment: {
    name: "Borrowed bench",
    carriageTravelMm: 900,
    springs: [{ id: "light", label: "light", count: 4, stiffnessNPerMm: 0.1, preloadN: 12 }],
  },
  moves: { press: PRESS, pull: PULL, reach: REACH },
  items: [
    { id: "block", kind: "heading", title: "To and fro" },
    item("press-1", "press"),
    item("pull-1", "pull"),
    item("press-2", "press"),
    item("pull-2", "pull"),
    { id: "sides", kind: "heading", title: "Sides" },
    item("reach-right", "reach", { side: "right" }),
    item("reach-left", "reach", { side: "left", seconds: 45 }),
  ],
};
