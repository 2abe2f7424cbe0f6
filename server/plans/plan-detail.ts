/** What a plan's page needs before the document arrives: owner, room, people, state, and the asker's rights. */
import { listPlanEvents, type PlanEvent } from "#db/repos/event-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { type Actor, canPlan, type PlanAction } from "#lib/policy/can.ts";
import type { StateNews } from "#lib/protocol/messages.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { editionOrigin, type Origin } from "#server/editions/origin.ts";
import { stateNews } from "#server/news/plan-news.ts";
import { openPlan } from "./open-plan.ts";

const ACTIONS = {
  write: "plan.write",
  comment: "plan.comment",
  handIn: "plan.hand-in",
  handBack: "plan.hand-back",
  sign: "plan.sign",
  share: "plan.share",
  delete: "plan.delete",
  withdraw: "plan.withdraw",
  propose: "plan.propose",
} as const satisfies Record<string, PlanAction>;

interface NamedPerson {
  readonly id: string;
  readonly name: string;
}
export interface PlanDetail {
  readonly id: string;
  readonly title: string;
  readonly lengthSeconds: number;
  readonly roomId: string;
  readonly team: boolean;
  readonly archived: boolean;
  /** The edition that it was made from; null for none, and for one that the asker may not read. */
  readonly origin: Origin | null;
  readonly owner: NamedPerson;
  readonly sharedWith: readonly NamedPerson[];
  readonly state: StateNews;
  readonly rights: Readonly<Record<keyof typeof ACTIONS, boolean>>;
}

/** Errors: 401, 403, 404. */
export function readPlanDetail(app: Springline, actor: Actor, id: string): Result<PlanDetail> {
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  const names = namesById(app.db);
  const named = (userId: string): NamedPerson => ({ id: userId, name: names.get(userId) ?? FORMER_MEMBER });
  const may = (action: PlanAction) => canPlan(person, action, row);
  return ok({
    id,
    title: row.title,
    lengthSeconds: row.lengthSeconds,
    roomId: row.roomId,
    team: row.team,
    archived: row.archivedAt !== null,
    origin: editionOrigin(app, actor, row.origin),
    owner: named(row.ownerId),
    sharedWith: row.sharedWith.map(named),
    state: stateNews(app, row),
    rights: {
      write: may(ACTIONS.write),
      comment: may(ACTIONS.comment),
      handIn: may(ACTIONS.handIn),
      handBack: may(ACTIONS.handBack),
      sign: may(ACTIONS.sign),
      share: may(ACTIONS.share),
      delete: may(ACTIONS.delete),
      withdraw: may(ACTIONS.withdraw),
      propose: may(ACTIONS.propose),
    },
  });
}

/** The plan's record in chronological order. Errors: 401, 403, 404. */
export function readPlanRecord(
  app: Springline,
  actor: Actor,
  id: string,
): Result<{ events: (PlanEvent & { actorName: string })[] }> {
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  const names = namesById(app.db);
  const events = listPlanEvents(app.db, id);
  return ok({ events: events.map((e) => ({ ...e, actorName: names.get(e.actorId) ?? "The server" })) });
}
