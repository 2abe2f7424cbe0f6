"use client";
/** The way from the plan to its rehearsals. */
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";

/** A plan's page opened with this shows the rehearsals at once: the way back from one. */
export const REHEARSALS_HASH = "#rehearsals";

export function RehearsalActs({ session, onOpen }: { readonly session: PlanSession; readonly onOpen: () => void }) {
  const { plan } = useSnapshot(session);
  if (!plan.items.some(isMoveItem)) return null;
  return (
    <button type="button" className="button" onClick={onOpen}>
      Rehearse
    </button>
  );
}
