"use client";
/** A copy that is being edited, kept in this browser with every change until it is sent or begun again. */
import { useCallback, useState } from "react";
import { proposalCopyKey } from "#app/_parts/kept/proposal-copies.ts";
import type { PlanSession } from "#app/_session/session.ts";

interface KeptCopy<T> {
  readonly copy: T;
  /** It was begun before this dialog was opened. */
  readonly wasKept: boolean;
  set(copy: T): void;
  /** A fresh copy in its place. */
  again(): void;
  drop(): void;
}

export function useKeptCopy<T extends object>(
  session: PlanSession,
  itemId: string | null,
  fresh: () => T,
): KeptCopy<T> {
  const key = proposalCopyKey({ userId: session.me.id, planId: session.planId, itemId });
  const [held, setHeld] = useState(() => {
    const kept = readCopy<T>(key);
    return { copy: kept ?? fresh(), wasKept: kept !== null };
  });
  const drop = useCallback(() => removeCopy(key), [key]);
  const set = (copy: T) => {
    keepCopy(key, copy);
    setHeld({ ...held, copy });
  };
  const again = () => {
    drop();
    setHeld({ copy: fresh(), wasKept: false });
  };
  return { ...held, set, again, drop };
}

function keepCopy(key: string, copy: object): void {
  try {
    localStorage.setItem(key, JSON.stringify(copy));
  } catch {
    // A full or forbidden store: the copy is still in the dialog.
  }
}

function readCopy<T>(key: string): T | null {
  try {
    const text = localStorage.getItem(key);
    return text === null ? null : (JSON.parse(text) as T); // written by keepCopy only
  } catch {
    return null;
  }
}

function removeCopy(key: string): void {
  try {
    localStorage.removeItem(key);
  } catch {
    // nothing was kept there either
  }
}
