/** Marks of one person as one small series for each criterion. Never summed: criteria are not of one kind. */
import type { Levels, Rubric } from "#lib/rubric/rubric.ts";

export interface MarksAt {
  readonly id: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly rubric: Rubric;
  readonly levels: Levels;
}

export interface MarkSeries {
  /** Id of the criterion. */
  readonly criterion: string;
  /** Its newest name. */
  readonly name: string;
  /** The most levels that it had. */
  readonly levels: number;
  /** The oldest first. `sentence`: what the level meant at the time. */
  readonly points: readonly {
    readonly marksId: string;
    readonly at: number;
    readonly level: number;
    readonly of: number;
    readonly sentence: string;
  }[];
}

/** In the order of the newest rubric; criteria that it no longer has come last. `marks`: the oldest first. */
export function markSeries(marks: readonly MarksAt[]): MarkSeries[] {
  const newestFirst = [...marks].reverse();
  const ids = [...new Set(newestFirst.flatMap(({ rubric }) => rubric.criteria.map(({ id }) => id)))];
  return ids.flatMap((criterion): MarkSeries[] => {
    const own = marks.flatMap(({ id, at, rubric, levels }) => {
      const level = levels[criterion];
      const found = rubric.criteria.find((one) => one.id === criterion);
      if (level === undefined || !found) return [];
      const point = { marksId: id, at, level, of: found.levels.length, sentence: found.levels[level - 1] ?? "" };
      return [{ name: found.name, point }];
    });
    if (own.length === 0) return [];
    const points = own.map(({ point }) => point);
    return [{ criterion, name: own.at(-1)?.name ?? "", levels: Math.max(...points.map(({ of }) => of)), points }];
  });
}
