"use client";
/**
 * Items that somebody else took out while this person was on them. Noticed as the change arrives: the fields of the item
 * still stand on the page then, and say what was being done.
 */
import { useEffect, useState } from "react";
import { planParts } from "#lib/doc/layout.ts";
import { takenOut } from "#lib/doc/taken-out.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { PlanSession } from "../session.ts";
import { nameOf } from "../words.ts";
import { fieldName } from "./fields.ts";

export interface Loss {
  readonly id: string;
  readonly name: string;
  readonly who: string;
  readonly undone: boolean;
  /** What the field is called that had the focus; null when none of the item's had. */
  readonly field: string | null;
  /** A field with a value typed and not yet taken over. What it holds is read when the item leaves the page. */
  readonly draft: HTMLInputElement | null;
}

/** The newest first. An item that is back, by anybody's act, is no loss any more. */
export function useTakenOut(session: PlanSession): { losses: readonly Loss[]; close: (id: string) => void } {
  const [losses, setLosses] = useState<readonly Loss[]>([]);
  useEffect(() => {
    const { items } = planParts(session.doc);
    const hear = () => {
      const loss = lossNow(session);
      setLosses((before) => {
        const still = before.filter(({ id }) => isLoss(session, id));
        if (loss) return [loss, ...still.filter(({ id }) => id !== loss.id)];
        return still.length === before.length ? before : still;
      });
    };
    items.observeDeep(hear);
    return () => items.unobserveDeep(hear);
  }, [session]);
  return { losses, close: (id) => setLosses((before) => before.filter((loss) => loss.id !== id)) };
}

function isLoss(session: PlanSession, id: string): boolean {
  const gone = takenOut(session.doc, id);
  return gone !== undefined && gone.by !== session.doc.clientID;
}

function lossNow(session: PlanSession): Loss | undefined {
  const { plan, selectedId } = session.getSnapshot();
  const gone = selectedId === null ? undefined : takenOut(session.doc, selectedId);
  const before = selectedId === null ? undefined : itemById(plan, selectedId);
  if (!gone || !before || gone.by === session.doc.clientID) return undefined;
  const { activeElement } = document;
  const draft = activeElement instanceof HTMLInputElement && "draft" in activeElement.dataset ? activeElement : null;
  return {
    id: before.id,
    name: nameOf(plan, before),
    who: session.names.who(gone.by),
    undone: gone.undone,
    field: activeElement?.closest("aside") ? fieldName(activeElement) : null,
    draft,
  };
}
