"use client";
/** Whether somebody else changed what a preview shows while it was open. The preview is worked out anew and says so. */
import { useEffect, useRef, useState } from "react";
import type * as Y from "yjs";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";

/**
 * How often that happened. `shown` is all that the preview shows, as text. One's own changes and undos do not count;
 * changes of the library or the machines do.
 */
export function useFresh(session: PlanSession, snap: SessionSnapshot, shown: string): number {
  const [times, setTimes] = useState(0);
  const before = useRef(shown);
  const by = useRef({ self: false, others: false });
  useEffect(() => {
    const note = (transaction: Y.Transaction) => {
      if (transaction.local) by.current.self = true;
      else by.current.others = true;
    };
    session.doc.on("afterTransaction", note);
    return () => session.doc.off("afterTransaction", note);
  }, [session]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: it looks anew at every snapshot
  useEffect(() => {
    const { self, others } = by.current;
    by.current = { self: false, others: false };
    if (before.current === shown) return;
    before.current = shown;
    if (others || !self) setTimes((n) => n + 1);
  }, [snap, shown]);
  return times;
}
