/**
 * The open sessions of this window, counted: React mounts twice while developing, and two sockets for one page would be
 * two people to everybody else.
 */
import { deviceCopyName, PlanSession } from "./session.ts";
import type { PlanPageProps } from "./session-types.ts";

/** How long a page that was left keeps its session, in milliseconds: React mounts twice while developing. */
const LINGER_MS = 300;
interface Held {
  readonly session: PlanSession;
  users: number;
  leaving?: ReturnType<typeof setTimeout>;
}
const held = new Map<string, Held>();

export function acquireSession(props: PlanPageProps): PlanSession {
  const key = deviceCopyName(props);
  const found = held.get(key) ?? { session: new PlanSession(props), users: 0 };
  clearTimeout(found.leaving);
  found.users++;
  held.set(key, found);
  return found.session;
}

export function releaseSession(session: PlanSession): void {
  for (const [key, entry] of held) {
    if (entry.session !== session || --entry.users > 0) continue;
    entry.leaving = setTimeout(() => {
      held.delete(key);
      session.end();
    }, LINGER_MS);
  }
}
