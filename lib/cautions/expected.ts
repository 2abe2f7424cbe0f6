/**
 * Which cautions of a move concern whom. General guidance to prompt a coach, never advice to one person: every screen and
 * export that shows it shows `CAUTION_NOTICE` too.
 */
import { tagWords } from "#lib/plan/format.ts";
import { EXPECTED_CAUTIONS, type ExpectedCaution, MOVE_CAUTIONS, type MoveCaution } from "#lib/plan/schema.ts";

export const CAUTION_NOTICE =
  "General guidance, not advice to any one person. What a participant's clinician, the machine maker's manual and local rules say comes first; when in doubt, leave the move out.";

export interface ExpectedGuidance {
  readonly condition: ExpectedCaution;
  /** As said of people: "people with wrist pain". */
  readonly people: string;
  readonly concerns: readonly MoveCaution[];
  /** The publication that links the condition to these cautions, or common practice. */
  readonly source: string;
}

const PRACTICE = "common practice, no source";

const GUIDANCE: Readonly<Record<ExpectedCaution, Omit<ExpectedGuidance, "condition">>> = {
  // The committee opinion was quoted from memory.
  pregnancy: {
    people: "people who are pregnant",
    concerns: ["supine", "prone", "unstable-carriage", "single-leg-balance"],
    source:
      "Mottola et al., 2019 Canadian guideline for physical activity throughout pregnancy, 2018 (lying on the back); American College of Obstetricians and Gynecologists, Committee Opinion 804, 2020 (falls, blows to the abdomen)",
  },
  "raised-blood-pressure": {
    people: "people with raised blood pressure",
    concerns: ["long-hold", "head-down"],
    source: `Wiles et al., The safety of isometric exercise, 2018 (pressure during holds); head-down: ${PRACTICE}`,
  },
  "bone-loss": {
    people: "people with bone loss",
    concerns: ["loaded-flexion", "loaded-rotation", "single-leg-balance", "unstable-carriage"],
    source: `Giangregorio et al., Too Fit To Fracture, 2014 and 2015 (bending, twisting); falls: ${PRACTICE}`,
  },
  "wrist-pain": { people: "people with wrist pain", concerns: ["wrist-load"], source: PRACTICE },
  "shoulder-pain": { people: "people with shoulder pain", concerns: ["overhead"], source: PRACTICE },
  "knee-pain": { people: "people with knee pain", concerns: ["kneeling"], source: PRACTICE },
  "back-pain": {
    people: "people with back pain",
    concerns: ["loaded-flexion", "loaded-rotation"],
    source: `${PRACTICE} (World Health Organization, Guideline for non-surgical management of chronic primary low back pain, 2023, recommends exercise and lists no postures)`,
  },
  "pelvic-floor": {
    people: "people with pelvic floor trouble",
    concerns: ["loaded-flexion", "long-hold"],
    source: PRACTICE,
  },
  glaucoma: {
    people: "people with glaucoma",
    concerns: ["head-down"],
    source:
      "Jasien et al., Intraocular pressure rise in subjects with and without glaucoma during four common yoga positions, 2015 (head-down poses)",
  },
  dizziness: {
    people: "people who get dizzy",
    concerns: ["head-down", "supine", "single-leg-balance"],
    source: PRACTICE,
  },
  "recent-surgery": {
    people: "people after recent surgery",
    concerns: MOVE_CAUTIONS,
    source: "no guideline found; clinics differ, so every caution counts and the surgeon decides",
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

/** All sources in one line, for the page of a rule that goes by them. */
export const EXPECTED_SOURCES = [
  ...EXPECTED_GUIDANCE.filter(({ source }) => source !== PRACTICE).map(
    ({ condition, source }) => `${tagWords(condition)}: ${source}`,
  ),
  `all others: ${PRACTICE}`,
].join("; ");
