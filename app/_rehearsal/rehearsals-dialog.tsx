"use client";
/** Rehearsals: start one, look at what one measured beside the plan as it is now, and take what is chosen of it. */
import { useRef, useState } from "react";
import { Moment } from "#app/_parts/moment.tsx";
import { Sheet } from "#app/_parts/sheet.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import styles from "./rehearsal.module.css";
import { REHEARSALS_HASH } from "./rehearsal-acts.tsx";
import { RehearsalPreview } from "./rehearsal-preview.tsx";
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
    // Read again, the page would open this anew.
    if (location.hash === REHEARSALS_HASH) history.replaceState(null, "", location.pathname + location.search);
    onClosed();
  };
  const chosen = rehearsals.all.find(({ id }) => id === chosenId) ?? rehearsals.all[0];
  return (
    <Sheet title="Rehearse" onClosed={closed} closer={closer}>
      <div className={`spread ${styles.start}`}>
        <p>
          Run the plan as it stands now, with no class: say every line aloud, do every set-up, and tap as each is really
          done. What you needed comes back here.
        </p>
        <a className="button button-strong" data-first href={`/plans/${session.planId}/rehearse`}>
          Rehearse now
        </a>
      </div>
      <h3>What was measured</h3>
      <Which rehearsals={rehearsals} chosenId={chosen?.id} onChoose={setChosenId} />
      {chosen && (
        <RehearsalPreview
          key={chosen.id}
          session={session}
          rehearsed={chosen.rehearsed}
          onTaken={() => closer.current?.()}
        />
      )}
    </Sheet>
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
        {studio === "asking" && "Asking the studio for rehearsals on its devices."}
        {studio === "no-answer" && "The studio does not answer just now: only what this browser keeps is shown."}
        {studio === "answered" && all.length === 0 && "No rehearsal of this plan yet."}
      </p>
      {all.length > 1 && (
        <fieldset className={styles.which}>
          <legend className="visually-hidden">Which rehearsal</legend>
          {all.map(({ id, at, of }) => (
            <label key={id} className="check">
              <input type="radio" name="rehearsal" checked={id === chosenId} onChange={() => onChoose(id)} />
              <span>
                <Moment at={at} />, {of}
              </span>
            </label>
          ))}
        </fieldset>
      )}
      {all.length === 1 && all[0] && (
        <p>
          <Moment at={all[0].at} />, {all[0].of}.
        </p>
      )}
    </>
  );
}
