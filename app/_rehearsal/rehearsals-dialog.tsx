"use client";
/** Rehearsals: start one, compare what one measured with the plan as it is now, and take what is chosen of it. */
import { useRef, useState } from "react";
import { Dialog } from "#app/_parts/dialog.tsx";
import { LocalTime } from "#app/_parts/local-time.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import styles from "./rehearsal.module.css";
import { RehearsalPreview } from "./rehearsal-preview.tsx";
import { REHEARSALS_HASH } from "./rehearsals-hash.ts";
import { HOW_TO_REHEARSE, LOOKING_ON_DEVICES, NO_ANSWER, NO_REHEARSAL } from "./rehearsals-words.ts";
import { type Rehearsals, useRehearsals } from "./use-rehearsals.ts";

export function RehearsalsDialog({
  session,
  onClosed,
}: {
  readonly session: PlanSession;
  readonly onClosed: () => void;
}) {
  const closer = useRef<(() => void) | null>(null);
  const rehearsals = useRehearsals(session);
  const [chosenId, setChosenId] = useState<string | null>(null);
  const closed = () => {
    // Otherwise a reload of the page would open this dialog again.
    if (location.hash === REHEARSALS_HASH) history.replaceState(null, "", location.pathname + location.search);
    onClosed();
  };
  const chosen = rehearsals.all.find(({ id }) => id === chosenId) ?? rehearsals.all[0];
  return (
    <Dialog title="Rehearse" size="sheet" onClose={closed} closer={closer}>
      <div className={`spread ${styles.start}`}>
        <p>{HOW_TO_REHEARSE}</p>
        <a className="button button-strong" data-first href={`/plans/${session.planId}/rehearse`}>
          Rehearse now
        </a>
      </div>
      <h3>Measured times</h3>
      <Which rehearsals={rehearsals} chosenId={chosen?.id} onChoose={setChosenId} />
      {chosen && (
        <RehearsalPreview
          key={chosen.id}
          session={session}
          rehearsed={chosen.rehearsed}
          onTaken={() => closer.current?.()}
        />
      )}
    </Dialog>
  );
}

interface WhichProps {
  readonly rehearsals: Rehearsals;
  readonly chosenId: string | undefined;
  onChoose(id: string): void;
}

function Which({ rehearsals: { all, studio }, chosenId, onChoose }: WhichProps) {
  return (
    <>
      <p className="quiet small" role="status">
        {studio === "asking" && LOOKING_ON_DEVICES}
        {studio === "no-answer" && NO_ANSWER}
        {studio === "answered" && all.length === 0 && NO_REHEARSAL}
      </p>
      {all.length > 1 && (
        <fieldset className={styles.which}>
          <legend className="visually-hidden">Which rehearsal</legend>
          {all.map(({ id, at, of }) => (
            <label key={id} className="check">
              <input type="radio" name="rehearsal" checked={id === chosenId} onChange={() => onChoose(id)} />
              <span>
                <LocalTime at={at} />, {of}
              </span>
            </label>
          ))}
        </fieldset>
      )}
      {all.length === 1 && all[0] && (
        <p>
          <LocalTime at={all[0].at} />, {all[0].of}.
        </p>
      )}
    </>
  );
}
