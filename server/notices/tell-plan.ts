/**
 * Who is told of what happens to a plan: one function an event. Call it inside the transaction of the command, with the row
 * as it was before.
 */
import { listMembers } from "#db/repos/people-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import type { NoticeData } from "#lib/notices/kinds.ts";
import type { Springline } from "#server/context/springline.ts";
import { tell } from "./tell.ts";

type App = Pick<Springline, "db" | "now">;
type OfPlan = Pick<PlanRow, "id" | "ownerId" | "sharedWith" | "handedInBy">;

/** Its owner, whoever offered it, and the people it is shared with. */
const peopleOf = ({ ownerId, handedInBy, sharedWith }: OfPlan): string[] => [
  ownerId,
  ...(handedInBy === null ? [] : [handedInBy]),
  ...sharedWith,
];

/** Who did it, and in which round or edition. */
type Done = Pick<NoticeData, "round" | "edition"> & { readonly byId: string };

/** A plan is offered for reading: the leads. */
export function tellOffered(app: App, plan: OfPlan, data: Done): void {
  const leads = listMembers(app.db).filter(({ roles }) => roles.includes("lead"));
  tell(app, { kind: "offered", to: leads.map(({ id }) => id), planId: plan.id, data });
}

/** A plan is taken back: the lead who was reading it. */
export function tellTakenBack(app: App, plan: OfPlan, data: Done, readerId: string | null): void {
  if (readerId !== null) tell(app, { kind: "taken-back", to: [readerId], planId: plan.id, data });
}

/** A plan is returned with notes. */
export const tellReturned = (app: App, plan: OfPlan, data: Done): void =>
  tell(app, { kind: "returned", to: peopleOf(plan), planId: plan.id, data });

/** A plan is signed off. */
export const tellSigned = (app: App, plan: OfPlan, data: Done): void =>
  tell(app, { kind: "signed", to: peopleOf(plan), planId: plan.id, data });

/** An edition is withdrawn: whoever signed it is told too. */
export const tellWithdrawn = (app: App, plan: OfPlan, data: Done, signedBy: string): void =>
  tell(app, { kind: "withdrawn", to: [...peopleOf(plan), signedBy], planId: plan.id, data });
