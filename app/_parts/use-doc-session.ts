"use client";
/** React's door to the sessions of shared documents, of whatever kind. */
import { useEffect, useState, useSyncExternalStore } from "react";
import type { SaveState } from "#lib/client/doc-session/save-state.ts";
import { sessionPool } from "#lib/client/doc-session/session-pool.ts";

interface Ends {
  readonly saveState: SaveState;
  end(): void;
}

const held = sessionPool<Ends>((run, ms) => {
  const timer = setTimeout(run, ms);
  return () => clearTimeout(timer);
});

/** Whether every document that is open here is saved on the server. */
export const allWordsSaved = (): boolean => held.all().every(({ saveState }) => saveState === "saved");

/** The session of that name; null until the page is in the browser. A session belongs to its name alone. */
export function useHeldSession<S extends Ends>(parts: readonly string[], make: () => S): S | null {
  const [session, setSession] = useState<S | null>(null);
  const name = parts.join("/");
  // biome-ignore lint/correctness/useExhaustiveDependencies: what the session is made from belongs to its name
  useEffect(() => {
    // The first part names the kind: what was made under a name is of that kind.
    const own = held.acquire(name, make) as S;
    setSession(own);
    return () => held.release(own);
  }, [name]);
  return session;
}

interface Shows<T> {
  readonly subscribe: (listener: () => void) => () => void;
  readonly getSnapshot: () => T;
}

export const useSessionSnapshot = <T>({ subscribe, getSnapshot }: Shows<T>): T =>
  useSyncExternalStore(subscribe, getSnapshot, getSnapshot);
