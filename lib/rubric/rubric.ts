/**
 * The studio's rubric: what a lead looks at in a plan or a class, and for each of it a few levels, each with a sentence
 * that says what it looks like. What a new studio begins with is common practice, no source.
 */
import * as z from "zod/mini";
import { ID_PATTERN } from "#lib/plan/schema.ts";

const NAME_MAX = 60;
const SENTENCE_MAX = 300;
const CRITERIA_MAX = 12;
const LEVELS = { min: 2, max: 6 } as const;

const words = (most: number, missing: string) =>
  z.string().check(z.trim(), z.minLength(1, missing), z.maxLength(most, `Write at most ${most} characters.`));

const criterionSchema = z.strictObject({
  id: z.string().check(z.regex(ID_PATTERN)),
  name: words(NAME_MAX, "Give every criterion a name."),
  /** From the first steps to the best, one sentence each. */
  levels: z
    .array(words(SENTENCE_MAX, "Say for every level what it looks like."))
    .check(
      z.minLength(LEVELS.min, `A criterion needs at least ${LEVELS.min} levels.`),
      z.maxLength(LEVELS.max, `A criterion has at most ${LEVELS.max} levels.`),
    ),
});

export const rubricSchema = z.strictObject({
  criteria: z.array(criterionSchema).check(
    z.minLength(1, "A rubric needs at least one criterion."),
    z.maxLength(CRITERIA_MAX, `A rubric has at most ${CRITERIA_MAX} criteria.`),
    z.refine((all) => new Set(all.map(({ id }) => id)).size === all.length, "Two criteria have the same id."),
    z.refine(
      (all) => new Set(all.map(({ name }) => name.toLowerCase())).size === all.length,
      "Two criteria have the same name. Rename one of them.",
    ),
  ),
});

export type Rubric = z.infer<typeof rubricSchema>;
export type Criterion = Rubric["criteria"][number];

/** Level by criterion: 1 is the first. A criterion that was not looked at is left out. */
export type Levels = Readonly<Record<string, number>>;

/** Why these levels cannot be marks by this rubric, in a sentence; null when they can. */
export function faultOfLevels(rubric: Rubric, levels: Levels): string | null {
  const marked = Object.keys(levels);
  if (marked.length === 0) return "Choose a level for at least one criterion.";
  for (const id of marked) {
    const criterion = rubric.criteria.find((one) => one.id === id);
    const level = levels[id] ?? 0;
    if (!criterion || !Number.isInteger(level) || level < 1 || level > criterion.levels.length)
      return "The rubric has changed since you began. Reload the page and choose the levels again.";
  }
  return null;
}

/** What a new studio begins with. */
export const STARTER_RUBRIC: Rubric = {
  criteria: [
    {
      id: "set-up",
      name: "Clear set-up",
      levels: [
        "People look around to see what to do.",
        "Springs and place are told; hands or feet are left to guess.",
        "Everything is told, in the order in which hands and feet can do it.",
        "Everything is told in order, in few words, and ends before the start.",
      ],
    },
    {
      id: "breath",
      name: "Breath",
      levels: [
        "Breath is not cued.",
        "Breath is cued now and then, or against the tempo.",
        "Breath is cued in the first repetitions and fits the tempo.",
        "Breath fits the tempo and comes back where the work is hardest.",
      ],
    },
    {
      id: "form",
      name: "Form",
      levels: [
        "Form is not cued.",
        "Form is cued in general words only.",
        "Form cues name what to do with which part of the body.",
        "Form cues come when the fault comes, and say what to feel.",
      ],
    },
    {
      id: "ways",
      name: "Ways round",
      levels: [
        "Nobody is offered another way.",
        "An easier way is offered late, or only once asked.",
        "An easier and a harder way are offered early.",
        "Every caution in the room has its way, offered without singling anybody out.",
      ],
    },
    {
      id: "changes",
      name: "Changes",
      levels: [
        "Changes eat the next move.",
        "Changes fit for the quickest in the room.",
        "Changes fit for everybody, with the carriage home first.",
        "Few changes, each told ahead, none that surprises.",
      ],
    },
    {
      id: "time",
      name: "Time",
      levels: [
        "The class ends early or late by minutes.",
        "The class ends on time; sides or blocks do not match.",
        "The class ends on time and both sides match.",
        "The class ends on the second, and the talk fits without a gap.",
      ],
    },
    {
      id: "safety",
      name: "Safety",
      levels: [
        "A caution goes unsaid.",
        "Cautions are said, some after the start.",
        "Every caution is said before the start.",
        "Every caution is said before the start, with what to do instead.",
      ],
    },
  ],
};
