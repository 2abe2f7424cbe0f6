"use client";
/**
 * Fit to length: all times as they are and as they would be, before anything changes. It lives: whoever writes
 * meanwhile, it is worked out anew and says so. Locks are set here at once; times only when they are taken.
 */
import { useMemo, useRef, useState } from "react";
import { setField } from "#app/_session/acts.ts";
import { namesOf } from "#app/_session/placed-name.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { secondsWords } from "#lib/plan/format.ts";
import { Changed } from "../_parts/changed.tsx";
import { Sheet } from "../_parts/sheet.tsx";
import { useFresh } from "../_session/use-fresh.ts";
import { FitSummary } from "./fit-summary.tsx";
import { changesAnything, fitPreview, rowsOf, type TimeRow } from "./preview.ts";
import { Stopped } from "./stopped.tsx";
import { shownIn, takeTimes } from "./take-times.ts";
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
  const shown = useMemo(() => shownIn(preview), [preview]);
  const fresh = useFresh(session, snap, shown);
  const closer = useRef<(() => void) | null>(null);
  const goTo = useRef<{ readonly id: string | null } | null>(null);
  const [said, setSaid] = useState("");
  const writes = session.canWrite;

  const go = (id: string | null) => {
    goTo.current = { id };
    closer.current?.();
  };
  const closed = () => {
    onClosed();
    if (goTo.current) onGo(goTo.current.id);
  };
  const lock = (row: TimeRow, on: boolean) => {
    setField(session, row.id, "locked", on || undefined);
    const name = namesOf(plan, [row.id]);
    setSaid(on ? `${name} is kept at ${secondsWords(row.from)}.` : `The time of ${name} may change.`);
  };
  const take = () => {
    if (takeTimes(session, shown)) closer.current?.();
  };

  const ready = changesAnything(preview);
  const table = (
    <TimeTable preview={preview} onLock={writes ? lock : undefined} onGo={preview.fit.possible ? undefined : go} />
  );
  return (
    <Sheet
      title="Fit to length"
      onClosed={closed}
      closer={closer}
      foot={
        <div className="spread">
          <p className="small quiet">
            {writes
              ? "Times change when you take them, as one step that can be undone. Kept times are set at once."
              : "This plan is not yours to write in any more: look, but nothing can be taken."}
          </p>
          {ready && (
            <button type="button" className="button button-strong" disabled={!writes} onClick={take}>
              Take these times
            </button>
          )}
        </div>
      }
    >
      <Changed fresh={fresh} what="times below are fresh" />
      <p className="visually-hidden" role="status">
        {said}
      </p>
      {preview.fit.possible ? (
        <FitSummary plan={plan} preview={preview} />
      ) : (
        <Stopped
          plan={plan}
          preview={preview}
          fit={preview.fit}
          onGo={go}
          onUnlock={writes ? unlockAll(lock, preview) : undefined}
        />
      )}
      {table}
    </Sheet>
  );
}

const unlockAll =
  (lock: (row: TimeRow, on: boolean) => void, preview: ReturnType<typeof fitPreview>) =>
  (ids: readonly string[]): void => {
    for (const row of rowsOf(preview)) if (ids.includes(row.id)) lock(row, false);
  };
