/** Finds a thread and checks the asker's right to its plan. */
import { readThread, type ThreadRow } from "#db/repos/thread-repo.ts";
import type { Actor } from "#lib/policy/can.ts";
import { NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { type OpenedPlan, openPlan } from "#server/plans/open-plan.ts";

export interface OwnThread extends OpenedPlan {
  readonly thread: ThreadRow;
}

/** A thread of a plan that the asker may comment on. Errors: 401, 403, 404. */
export function openOwnThread(app: Pick<Springline, "db">, actor: Actor, threadId: string): Result<OwnThread> {
  const thread = readThread(app.db, threadId);
  if (!thread) return NOT_FOUND;
  const opened = openPlan(app, actor, thread.planId, "plan.comment");
  return opened.ok ? ok({ ...opened.value, thread }) : opened;
}

/** For a route's `first`. */
export const needsThread = ({
  app,
  actor,
  params,
}: {
  readonly app: Pick<Springline, "db">;
  readonly actor: Actor;
  readonly params: { readonly id?: string };
}) => openOwnThread(app, actor, params.id ?? "");
