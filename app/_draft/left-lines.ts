/** Proposed lines that somebody left, remembered on this device. Client only. */
import { useSyncExternalStore } from "react";
import type { ScriptLine } from "#lib/plan/schema.ts";

/** More than a class can have; the oldest are forgotten. */
const MOST = 2000;
const NOTHING: ReadonlySet<string> = new Set();

const listeners = new Set<() => void>();
let known: { readonly planId: string; readonly left: ReadonlySet<string> } | null = null;

const storageKey = (planId: string): string => `springline/left/${planId}`;
export const leftKey = (itemId: string, { kind, text }: ScriptLine): string => `${itemId} ${kind} ${text}`;

export function useLeft(planId: string): ReadonlySet<string> {
  return useSyncExternalStore(
    subscribe,
    () => leftOf(planId),
    () => NOTHING,
  );
}

export function leaveLines(planId: string, keys: readonly string[]): void {
  const left = new Set([...leftOf(planId), ...keys]);
  known = { planId, left };
  try {
    localStorage.setItem(storageKey(planId), JSON.stringify([...left].slice(-MOST)));
  } catch (error) {
    // A browser that stores nothing proposes them again next time; nothing else is lost.
    if (!(error instanceof DOMException)) throw error;
  }
  for (const listener of listeners) listener();
}

export function leftOf(planId: string): ReadonlySet<string> {
  if (known?.planId !== planId) known = { planId, left: stored(planId) };
  return known.left;
}

function stored(planId: string): ReadonlySet<string> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(storageKey(planId)) ?? "[]");
    return new Set(Array.isArray(kept) ? kept.filter((key) => typeof key === "string") : []);
  } catch {
    return NOTHING;
  }
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
