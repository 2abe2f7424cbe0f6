"use client";
/** Opens *Fit to length*, for those who may edit a plan that has a move. */
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";

export function FitButton({ session, onOpen }: { readonly session: PlanSession; readonly onOpen: () => void }) {
  const { plan } = useSnapshot(session);
  if (!session.canWrite || !plan.items.some(isMoveItem)) return null;
  return (
    <button type="button" className="button" onClick={onOpen}>
      Fit to length
    </button>
  );
}
