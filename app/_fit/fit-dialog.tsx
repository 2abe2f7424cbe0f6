"use client";
/**
 * Fit to length: all times as they are and as they would be, before anything changes. While somebody else writes, the
 * preview is worked out again and says so. Locks apply at once; times only when they are taken.
 */
import { type RefObject, useMemo, useRef, useState } from "react";
import { setField } from "#app/_session/acts.ts";
import { placedNames } from "#app/_session/placed-name.ts";
import { asShown, LOOK_ONLY, TAKEN_IN_ONE_STEP, TIMES_UP_TO_DATE } from "#app/_session/previews.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { Changed } from "../_parts/changed.tsx";
import { Dialog } from "../_parts/dialog.tsx";
import { useFresh } from "../_session/use-fresh.ts";
import { FitSummary } from "./fit-summary.tsx";
import { KEPT_AT_ONCE, keptWords } from "./fit-words.ts";
import { changesAnything, type FitPreview, fitPreview, rowsOf, type TimeRow } from "./preview.ts";
import { Stopped } from "./stopped.tsx";
import { takeTimes } from "./take-times.ts";
import { TimeTable } from "./time-table.tsx";

interface FitDialogProps {
  readonly session: PlanSession;
  readonly onClosed: () => void;
  /** Told after the dialog has closed: an item, or null for the class. */
  readonly onGo: (itemId: string | null) => void;
}

export function FitDialog({ session, onClosed, onGo }: FitDialogProps) {
  const snap = useSnapshot(session);
  const { plan } = snap;
  const preview = useMemo(() => fitPreview(plan), [plan]);
  const shown = useMemo(() => asShown(preview), [preview]);
  const fresh = useFresh(session, snap, shown);
  const closer = useRef<(() => void) | null>(null);
  const way = useWayOut(closer, onClosed, onGo);
  const take = () => {
    if (takeTimes(session, shown)) closer.current?.();
  };
  return (
    <Dialog
      title="Fit to length"
      size="sheet"
      onClose={way.closed}
      closer={closer}
      foot={<Foot writes={session.canWrite} ready={changesAnything(preview)} onTake={take} />}
    >
      <Changed fresh={fresh} what={TIMES_UP_TO_DATE} />
      <Times session={session} plan={plan} preview={preview} onGo={way.go} />
    </Dialog>
  );
}

/** Closing the dialog towards an item or the class: the page moves only once the dialog is gone. */
function useWayOut(
  closer: RefObject<(() => void) | null>,
  onClosed: () => void,
  onGo: FitDialogProps["onGo"],
): { go(id: string | null): void; closed(): void } {
  const goTo = useRef<{ readonly id: string | null } | null>(null);
  return {
    go: (id) => {
      goTo.current = { id };
      closer.current?.();
    },
    closed: () => {
      onClosed();
      if (goTo.current) onGo(goTo.current.id);
    },
  };
}

interface TimesProps {
  readonly session: PlanSession;
  readonly plan: Plan;
  readonly preview: FitPreview;
  readonly onGo: (id: string | null) => void;
}

/** What the fit comes to, and the table in which times are kept or let go. */
function Times({ session, plan, preview, onGo }: TimesProps) {
  const [said, setSaid] = useState("");
  const { fit } = preview;
  const lock = (row: TimeRow, on: boolean) => {
    setField(session, row.id, "locked", on || undefined);
    setSaid(keptWords(placedNames(plan, [row.id]), row.from, on));
  };
  const unlock = (ids: readonly string[]) => {
    for (const row of rowsOf(preview)) if (ids.includes(row.id)) lock(row, false);
  };
  const writes = session.canWrite;
  return (
    <>
      <p className="visually-hidden" role="status">
        {said}
      </p>
      {fit.possible ? (
        <FitSummary plan={plan} preview={preview} />
      ) : (
        <Stopped {...{ plan, preview, fit, onGo }} onUnlock={writes ? unlock : undefined} />
      )}
      <TimeTable preview={preview} onLock={writes ? lock : undefined} onGo={fit.possible ? undefined : onGo} />
    </>
  );
}

interface FootProps {
  readonly writes: boolean;
  /** Is there anything to take? */
  readonly ready: boolean;
  readonly onTake: () => void;
}

function Foot({ writes, ready, onTake }: FootProps) {
  return (
    <div className="spread">
      <p className="small quiet">{writes ? `${TAKEN_IN_ONE_STEP} ${KEPT_AT_ONCE}` : LOOK_ONLY}</p>
      {ready && (
        <button type="button" className="button button-strong" disabled={!writes} data-first="" onClick={onTake}>
          Take these times
        </button>
      )}
    </div>
  );
}
