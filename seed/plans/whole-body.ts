/** The signed plan: forty-five minutes of whole-body work in the Loft. */
import type { Plan } from "#lib/plan/schema.ts";
import { ROOMS } from "#seed/studio/rooms.ts";
import { composePlan, type DemoRow } from "./compose.ts";

const LEGS = { firm: 1, strong: 1 };
const ONE_LEG = { light: 1, firm: 1 };
const LIGHT = { light: 1 };
const PULLING = { light: 1, middle: 1 };
const MIDDLE = { middle: 1 };

const ROWS: readonly DemoRow[] = [
  { heading: "Legs, lying" },
  { move: "leg-press-supine", seconds: 75, springs: LEGS, also: ["focus"], crew: "Wide, from the side." },
  { move: "calf-press-supine", seconds: 40, springs: LEGS, transition: 9 },
  { move: "leg-press-single", side: "right", seconds: 50, springs: ONE_LEG, transition: 14 },
  { move: "leg-press-single", side: "left", seconds: 50, springs: ONE_LEG, transition: 10 },
  { move: "bridge-supine", seconds: 60, springs: ONE_LEG, transition: 9, also: ["focus"] },
  { move: "bridge-leg-curl", seconds: 60, springs: LIGHT, transition: 11 },
  { heading: "Legs, standing" },
  {
    move: "lunge-back-slide",
    side: "right",
    seconds: 60,
    springs: LIGHT,
    transition: 13,
    also: ["focus"],
    crew: "Knees close.",
  },
  { move: "side-lunge", side: "right", seconds: 60, springs: LIGHT, facing: "left", transition: 10 },
  { move: "lunge-back-slide", side: "left", seconds: 60, springs: LIGHT, transition: 13 },
  { move: "side-lunge", side: "left", seconds: 60, springs: LIGHT, facing: "right", transition: 12 },
  { move: "split-squat", side: "left", seconds: 50, springs: LIGHT, transition: 11 },
  { move: "split-squat", side: "right", seconds: 50, springs: LIGHT, transition: 12 },
  { pause: 30, text: "Drink, and find both handles." },
  { heading: "Standing with the handles" },
  { move: "squat-handles", seconds: 60, springs: PULLING, transition: 20, also: ["focus"], crew: "From the side." },
  { move: "hinge-standing", seconds: 60, springs: PULLING, transition: 6 },
  { move: "upright-row-standing", seconds: 50, springs: PULLING, transition: 6 },
  { heading: "Arms, kneeling" },
  { move: "row-kneeling", seconds: 60, springs: PULLING, transition: 12, also: ["focus"] },
  { move: "straight-arm-pull", seconds: 50, springs: PULLING, transition: 8 },
  { move: "curl-kneeling", seconds: 50, springs: MIDDLE, transition: 10 },
  { move: "triceps-press-back", seconds: 50, springs: MIDDLE, transition: 8 },
  { move: "chest-press-kneeling", seconds: 60, springs: MIDDLE, transition: 10, also: ["focus"], crew: "Hands close." },
  { move: "overhead-press-kneeling", seconds: 45, springs: MIDDLE, transition: 9 },
  { move: "fly-kneeling", seconds: 60, springs: MIDDLE, transition: 9 },
  { pause: 40, text: "Handles down. Shake out the arms, drink." },
  { heading: "Trunk, front platform" },
  { move: "forearm-plank-slide", seconds: 60, springs: MIDDLE, transition: 15, crew: "Wide." },
  { move: "bear-plank-hover", seconds: 40, springs: MIDDLE, transition: 12 },
  { move: "plank-side-tuck", side: "right", seconds: 40, springs: MIDDLE, transition: 14 },
  { move: "plank-side-tuck", side: "left", seconds: 40, springs: MIDDLE, transition: 12 },
  { heading: "Sides and turns" },
  { move: "side-plank-lift", side: "right", seconds: 40, springs: MIDDLE, facing: "left", transition: 13 },
  { move: "side-plank-lift", side: "left", seconds: 40, springs: MIDDLE, facing: "right", transition: 12 },
  { move: "diagonal-pull", side: "right", seconds: 50, springs: LIGHT, facing: "left", transition: 28 },
  { move: "diagonal-pull", side: "left", seconds: 50, springs: LIGHT, facing: "right", transition: 14 },
  { move: "trunk-rotation-seated", side: "right", seconds: 50, springs: LIGHT, facing: "left", transition: 14 },
  { move: "trunk-rotation-seated", side: "left", seconds: 50, springs: LIGHT, facing: "right", transition: 13 },
  { heading: "Finish" },
  { move: "prone-extension", seconds: 60, springs: LIGHT, transition: 12, also: ["focus"], crew: "From above." },
  { move: "curl-up-press", seconds: 60, springs: { light: 2 }, transition: 16, also: ["focus"] },
  { move: "opposite-reach", seconds: 60, springs: LIGHT, transition: 13 },
];

export const WHOLE_BODY: Plan = composePlan(
  {
    title: "Whole body, steady",
    lengthSeconds: 2700,
    theme: { name: "Whole body", shares: { quadriceps: 0.08, glutes: 0.1, "upper-back": 0.1, abdominals: 0.08 } },
    level: "open",
    expected: ["knee-pain", "wrist-pain"],
    openingSeconds: 180,
    closingSeconds: 180,
    people: 6,
    notes: "Ask about knees and wrists at the door. Music down for the turns.",
  },
  ROOMS[1]?.equipment ?? { name: "Room", carriageTravelMm: 820, springs: [] },
  ROWS,
);
