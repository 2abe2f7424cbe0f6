/** The good class: twenty-five minutes of upper body and trunk in the Harbour room, written by two coaches. */
import type { Plan } from "#lib/plan/schema.ts";
import { ROOMS } from "#seed/studio/rooms.ts";
import { composePlan, type DemoRow } from "./compose.ts";

const MIDDLE = { middle: 1 };
const PULLING = { light: 1, middle: 1 };
const LIGHT = { light: 1 };

const ROWS: readonly DemoRow[] = [
  { heading: "Trunk, front platform" },
  { move: "plank-slide", seconds: 60, springs: MIDDLE, also: ["focus"], crew: "Wide, from the side." },
  { move: "forearm-pike", seconds: 60, springs: MIDDLE, transition: 9, also: ["focus"] },
  { move: "push-up-slow", seconds: 45, springs: MIDDLE, transition: 6 },
  { move: "bear-plank-press", seconds: 50, springs: MIDDLE, transition: 9 },
  { heading: "Pulls, kneeling, facing back" },
  { move: "lat-pull-kneeling", seconds: 60, springs: PULLING, transition: 24, also: ["focus"], crew: "From the back." },
  { move: "row-kneeling", seconds: 60, springs: PULLING, transition: 6, also: ["focus"] },
  { move: "curl-kneeling", seconds: 50, springs: MIDDLE, transition: 9 },
  { move: "reverse-fly-crossed", seconds: 50, springs: MIDDLE, transition: 8 },
  { pause: 40, text: "Handles down. Shake out the arms, drink." },
  { heading: "Presses, kneeling, facing front" },
  { move: "chest-press-kneeling", seconds: 60, springs: MIDDLE, transition: 12, also: ["focus"], crew: "Hands close." },
  { move: "overhead-press-kneeling", seconds: 50, springs: MIDDLE, transition: 6 },
  { move: "triceps-press-forward", seconds: 60, springs: MIDDLE, transition: 6 },
  { heading: "Sides" },
  { move: "trunk-rotation-kneeling", side: "right", seconds: 55, springs: LIGHT, facing: "left", transition: 15 },
  { move: "row-single", side: "right", seconds: 50, springs: LIGHT, transition: 8 },
  { move: "trunk-rotation-kneeling", side: "left", seconds: 55, springs: LIGHT, facing: "right", transition: 10 },
  { move: "row-single", side: "left", seconds: 50, springs: LIGHT, transition: 8 },
  { heading: "Finish" },
  { move: "side-plank-forearm", side: "right", seconds: 40, springs: LIGHT, facing: "left", transition: 18 },
  { move: "side-plank-forearm", side: "left", seconds: 40, springs: LIGHT, facing: "right", transition: 12 },
  { move: "curl-up-press", seconds: 60, springs: { light: 2 }, transition: 22, also: ["focus"], crew: "From above." },
  { move: "prone-extension", seconds: 60, springs: LIGHT, transition: 15, also: ["focus"] },
  { move: "forearm-plank-hold", seconds: 45, springs: LIGHT, transition: 17 },
];

export const UPPER_BODY_AND_TRUNK: Plan = composePlan(
  {
    title: "Upper body and trunk",
    lengthSeconds: 1500,
    theme: {
      name: "Upper body and trunk",
      shares: { "upper-back": 0.15, abdominals: 0.15, chest: 0.04, shoulders: 0.1 },
    },
    level: "open",
    expected: ["wrist-pain", "knee-pain"],
    openingSeconds: 90,
    closingSeconds: 90,
    headsUpSeconds: 15,
    countInSeconds: 3,
    gridSeconds: 5,
    people: 10,
    notes: "Welcome, who is new, what to skip and why. Close with slow breathing and a stretch for the chest.",
  },
  ROOMS[0]?.equipment ?? { name: "Room", carriageTravelMm: 900, springs: [] },
  ROWS,
);
