"use client";
/** Whether what a preview shows was changed by somebody else while it stood open: it is worked out anew, and says so. */
import { useEffect, useRef, useState } from "react";
import type * as Y from "yjs";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";

/**
 * How often that happened. `shown` is all that the preview shows, as text. A change of one's own hand, an undo of it
 * included, does not count; one of the library or the machines does.
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
  // biome-ignore lint/correctness/useExhaustiveDependencies: with every snapshot it starts to count hands anew
  useEffect(() => {
    const { self, others } = by.current;
    by.current = { self: false, others: false };
    if (before.current === shown) return;
    before.current = shown;
    if (others || !self) setTimes((n) => n + 1);
  }, [snap, shown]);
  return times;
}
