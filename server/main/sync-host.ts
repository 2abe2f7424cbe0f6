/** Connects the sync server with the program: who holds a session, what it may do, what each kind of document means. */

import { readPlanRow } from "#db/repos/plan-repo.ts";
import { can, canPlan, type Person } from "#lib/policy/can.ts";
import type { DocKind, DocName, News } from "#lib/protocol/messages.ts";
import { readSignedIn, sessionAccess } from "#server/auth/actor.ts";
import type { Springline } from "#server/context/springline.ts";
import { planKind } from "#server/plans/plan-kind.ts";
import { monthKind } from "#server/programme/month-kind.ts";
import { monthIsNear } from "#server/programme/month-range.ts";
import type { DocAccess, DocKindHooks, SyncHost } from "#server/sync/host.ts";

/** `app.documents` may not exist yet: it is not used before the first socket. */
export function createSyncHost(app: Springline): SyncHost {
  const kinds: Record<DocKind, DocKindHooks> = { plan: planKind(app), month: monthKind(app) };
  const build: News[] = app.env.build === null ? [] : [{ t: "program", build: app.env.build }];
  return {
    kinds,
    async authenticate(headers) {
      const who = await readSignedIn(headers, app);
      return who && { sessionId: who.sessionId, userId: who.actor.id, name: who.name };
    },
    accessTo(name) {
      const accessOf = documentAccess(app, name);
      return (session) => {
        const now = sessionAccess(app.db, session.sessionId, app.now());
        if (!now || now.userId !== session.userId) return null;
        return accessOf({ kind: "person", id: now.userId, roles: now.roles });
      };
    },
    welcome: (name, session) => [...build, ...kinds[name.kind].welcome(name, session.userId)],
  };
}

const NONE: DocAccess = { exists: false, reads: false, writes: false, comments: false };

/** The policy's answers for one document. A deleted plan does not exist, so that its open pages are told. */
function documentAccess(app: Pick<Springline, "db" | "now">, name: DocName): (person: Person) => DocAccess {
  if (name.kind === "month") return monthAccess(monthIsNear(name.key, app.now()));
  const plan = readPlanRow(app.db, name.key);
  if (!plan || plan.deletedAt !== null) return () => NONE;
  return (person) => ({
    exists: true,
    reads: canPlan(person, "plan.read", plan),
    writes: canPlan(person, "plan.write", plan),
    comments: canPlan(person, "plan.comment", plan),
  });
}

const monthAccess =
  (exists: boolean) =>
  (person: Person): DocAccess => {
    const reads = exists && can(person, "programme.read");
    return { exists, reads, writes: reads && can(person, "programme.write"), comments: false };
  };
