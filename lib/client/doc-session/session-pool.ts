/**
 * The open sessions of this window, counted by use. React mounts twice in development, and two sockets for one page
 * would look like two people to everybody else. A session that nobody uses ends after a moment.
 */
import type { Edge } from "./edge.ts";

/** How long an unused session is kept, in ms. */
const LINGER_MS = 300;

interface Held<S> {
  readonly session: S;
  users: number;
  stay: () => void;
}

export interface SessionPool<S> {
  /** The session of that name, made where there is none. */
  acquire(name: string, make: () => S): S;
  release(session: S): void;
  /** Those that are open. */
  all(): S[];
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
    all: () => [...held.values()].map(({ session }) => session),
  };
}
