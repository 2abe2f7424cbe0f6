/** A small plan with one move, for tests about its script. */
import { PLAN_FORMAT, type Plan, type ScriptLine } from "#lib/plan/schema.ts";

export function planWithScript(script: ScriptLine[]): Plan {
  return {
    format: PLAN_FORMAT,
    title: "Pulls",
    lengthSeconds: 600,
    equipment: {
      name: "Harbour room",
      carriageTravelMm: 900,
      springs: [{ id: "light", label: "light", count: 2, stiffnessNPerMm: 0.1, preloadN: 10 }],
    },
    moves: {
      "kneeling-row": {
        name: "Kneeling row",
        station: "carriage",
        position: "kneeling",
        facing: "back",
        hands: "handles",
        feet: "free",
        sides: "each",
        pattern: "pull",
        muscles: { "upper-back": 1, biceps: 0.5 },
        resistance: "springs",
        tempo: { outSeconds: 2, backSeconds: 2 },
        cautions: ["kneeling"],
      },
    },
    items: [
      { id: "start", kind: "heading", title: "Pulls" },
      { id: "row", kind: "move", move: "kneeling-row", side: "left", seconds: 60, springs: { light: 2 }, script },
      { id: "row-right", kind: "move", move: "kneeling-row", side: "right", seconds: 60, springs: { light: 2 } },
    ],
  };
}
