/** Who is told of a step of a plan. */
import { listMembers } from "#db/repos/people-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import type { Springline } from "#server/context/springline.ts";

/** Ids of everybody who may read a plan to return or sign it. */
export const leadsOf = (app: Pick<Springline, "db">): string[] =>
  listMembers(app.db)
    .filter(({ roles }) => roles.includes("lead"))
    .map(({ id }) => id);

/** Ids of the people whose plan it is: its owner, who offered it, and those it is shared with. */
export const writersOf = (row: PlanRow): string[] => [
  row.ownerId,
  ...(row.handedInBy === null ? [] : [row.handedInBy]),
  ...row.sharedWith,
];
