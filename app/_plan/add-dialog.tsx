"use client";
/** Adds to the class after the chosen item: a move from the library (both sides at once where it has sides), a heading, a pause. */
import { useState } from "react";
import { Dialog } from "../_parts/dialog.tsx";
import { MovePicker } from "../_parts/move-picker.tsx";
import { addHeading, addMoveItem, addMovePair, addPause } from "../_session/acts.ts";
import { nameOf } from "../_session/item-words.ts";
import type { PlanSession } from "../_session/session.ts";

interface AddDialogProps {
  readonly session: PlanSession;
  /** Called at once, while what was added is chosen; closes the dialog too. A heading or a pause is then filled in. */
  readonly onAdded: (what: "move" | "other") => void;
  readonly onClose: () => void;
}

export function AddDialog({ session, onAdded, onClose }: AddDialogProps) {
  const { plan, selectedId } = session.getSnapshot();
  const after = plan.items.find((item) => item.id === selectedId) ?? plan.items.at(-1);
  return (
    <Dialog title="Add to the class" onClose={onClose}>
      <p className="quiet">{after ? `After ${nameOf(plan, after)}.` : "As the first item of the class."}</p>
      <WhatToAdd session={session} afterId={after?.id ?? null} onAdded={onAdded} />
    </Dialog>
  );
}

interface WhatToAddProps {
  readonly session: PlanSession;
  /** The item behind which it is added; null: at the beginning. */
  readonly afterId: string | null;
  readonly onAdded: AddDialogProps["onAdded"];
}

function WhatToAdd({ session, afterId, onAdded }: WhatToAddProps) {
  const [pairs, setPairs] = useState(true);
  const take = (moveId: string) => {
    const isSided = session.studio.moves[moveId]?.sides === "each";
    const add = isSided && pairs ? addMovePair : addMoveItem;
    add(session, afterId, moveId);
    onAdded("move");
  };
  const adding = (act: (session: PlanSession, afterId: string | null) => void) => () => {
    act(session, afterId);
    onAdded("other");
  };
  return (
    <>
      <MovePicker
        moves={session.studio.moves}
        archived={session.studio.archived}
        equipment={session.getSnapshot().plan.equipment}
        chosen={null}
        onTake={take}
      />
      <label className="check">
        <input type="checkbox" checked={pairs} onChange={(event) => setPairs(event.target.checked)} />
        Add left and right together where a move has sides
      </label>
      <div className="acts">
        <button type="button" className="button" onClick={adding(addHeading)}>
          Add a heading
        </button>
        <button type="button" className="button" onClick={adding(addPause)}>
          Add a pause
        </button>
      </div>
    </>
  );
}
