/**
 * Which tags of a move concern whom. General guidance to prompt a coach, never advice to a person: every screen and
 * export that shows it shows `CAUTION_NOTICE` beside it.
 */
import { EXPECTED_CAUTIONS, type ExpectedCaution, MOVE_CAUTIONS, type MoveCaution } from "#lib/plan/schema.ts";

export const CAUTION_NOTICE =
  "General guidance, not advice to any one person. What a participant's clinician, the machine maker's manual and local rules say goes first; when in doubt, leave the move out.";

export interface ExpectedGuidance {
  readonly condition: ExpectedCaution;
  /** As said of people: "people with wrist pain". */
  readonly people: string;
  readonly concerns: readonly MoveCaution[];
  /** Where the link between the condition and the tags comes from. */
  readonly source: string;
}

const PRACTICE = "common practice, no source";

const GUIDANCE: Readonly<Record<ExpectedCaution, Omit<ExpectedGuidance, "condition">>> = {
  pregnancy: {
    people: "people who are pregnant",
    concerns: ["supine", "prone", "unstable-carriage", "single-leg-balance"],
    source:
      "2019 Canadian guideline for physical activity throughout pregnancy, Br J Sports Med 52:1339 (lying on the back); ACOG Committee Opinion 804 (falls, blows to the abdomen; quoted from memory)",
  },
  "raised-blood-pressure": {
    people: "people with raised blood pressure",
    concerns: ["long-hold", "head-down"],
    source: `Wiles et al. 2018, PMC5882444 (pressure during isometric holds); head-down: ${PRACTICE}`,
  },
  "bone-loss": {
    people: "people with bone loss",
    concerns: ["loaded-flexion", "loaded-rotation", "single-leg-balance", "unstable-carriage"],
    source: `Too Fit To Fracture, Osteoporos Int 25:821 and PMC5101068 (bending, twisting); falls: ${PRACTICE}`,
  },
  "wrist-pain": { people: "people with wrist pain", concerns: ["wrist-load"], source: PRACTICE },
  "shoulder-pain": { people: "people with shoulder pain", concerns: ["overhead"], source: PRACTICE },
  "knee-pain": { people: "people with knee pain", concerns: ["kneeling"], source: PRACTICE },
  "back-pain": {
    people: "people with back pain",
    concerns: ["loaded-flexion", "loaded-rotation"],
    source: `${PRACTICE} (WHO guideline on chronic low back pain, 2023, recommends exercise and lists no postures)`,
  },
  "pelvic-floor": {
    people: "people with pelvic floor trouble",
    concerns: ["loaded-flexion", "long-hold"],
    source: PRACTICE,
  },
  glaucoma: {
    people: "people with glaucoma",
    concerns: ["head-down"],
    source: "Jasien et al. 2015, PLoS ONE 10(12):e0144505 (eye pressure in head-down poses)",
  },
  dizziness: {
    people: "people who get dizzy",
    concerns: ["head-down", "supine", "single-leg-balance"],
    source: PRACTICE,
  },
  "recent-surgery": {
    people: "people after recent surgery",
    concerns: MOVE_CAUTIONS,
    source: "no guideline found; clinics differ, so every tag counts and the surgeon decides",
  },
  "first-class": {
    people: "people in their first class",
    concerns: ["head-down", "unstable-carriage", "single-leg-balance"],
    source: PRACTICE,
  },
};

export const EXPECTED_GUIDANCE: readonly ExpectedGuidance[] = EXPECTED_CAUTIONS.map((condition) => ({
  condition,
  ...GUIDANCE[condition],
}));
