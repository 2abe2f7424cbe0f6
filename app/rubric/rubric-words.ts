/** The sentences of the rubric's page. */
export const RUBRIC = {
  title: "Rubric",
  leadReads: "What leads look at when they mark a plan or a class, from the first steps to the best.",
  leadWrites:
    "What leads look at when they mark a plan or a class, from the first steps to the best. Marks that were set keep the sentences of their day.",
  name: "What is looked at",
  addCriterion: "Add a criterion",
  addLevel: "Add a level",
  save: "Save the rubric",
  saving: "Saving…",
  saved: "Saved. New marks use it from now on.",
} as const;

export const levelLabel = (level: number, of: number): string =>
  level === 1 ? "Level 1, the first steps" : level === of ? `Level ${level}, the best` : `Level ${level}`;
export const takeOutCriterion = (name: string): string => `Take out ${name === "" ? "this criterion" : name}`;
export const takeOutLevel = (level: number): string => `Take out level ${level}`;
