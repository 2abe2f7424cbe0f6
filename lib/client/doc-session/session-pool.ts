/**
 * The open sessions of this window, counted: React mounts twice while developing, and two sockets for one page would be
 * two people to everybody else. A session that nobody uses lingers a moment, and ends.
 */
import type { Edge } from "./edge.ts";

/** How long, in ms. */
const LINGER_MS = 300;

interface Held<S> {
  readonly session: S;
  users: number;
  stay: () => void;
}

export interface SessionPool<S> {
  /** The session of that name; made when there is none. */
  acquire(name: string, make: () => S): S;
  release(session: S): void;
}

export function sessionPool<S extends { end(): void }>(later: Edge["later"]): SessionPool<S> {
  const held = new Map<string, Held<S>>();
  return {
    acquire(name, make) {
      const found = held.get(name) ?? { session: make(), users: 0, stay: () => undefined };
      found.stay();
      found.users++;
      held.set(name, found);
      return found.session;
    },
    release(session) {
      for (const [name, entry] of held) {
        if (entry.session !== session || --entry.users > 0) continue;
        entry.stay = later(() => {
          held.delete(name);
          session.end();
        }, LINGER_MS);
      }
    },
  };
}
