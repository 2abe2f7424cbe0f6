"use client";
/** Rehearsing a draft: the screen before it, the run, and the way back to the plan with what was measured. */
import { useState } from "react";
import { dropRunning, keepRehearsal, keepRunning, readRunning } from "#app/_rehearsal/kept-rehearsals.ts";
import { REHEARSALS_HASH } from "#app/_rehearsal/rehearsals-hash.ts";
import { useSettings } from "#app/floor/_parts/use-settings.ts";
import { RehearsalDone } from "#app/floor/_rehearsal/rehearsal-done.tsx";
import { RehearsalScreen } from "#app/floor/_rehearsal/rehearsal-screen.tsx";
import type { Card } from "#lib/card/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import type { KeptRehearsal } from "#lib/floor/kept-rehearsal.ts";
import { DraftReady } from "./draft-ready.tsx";

type Screen =
  | { readonly kind: "ready" }
  | { readonly kind: "running"; readonly resumed: KeptRehearsal | null }
  | { readonly kind: "done"; readonly log: ClassLog; readonly isKept: boolean };

export function DraftRehearsal({ card, userId }: { readonly card: Card; readonly userId: string }) {
  const settings = useSettings();
  const { planId } = card.edition;
  const [screen, setScreen] = useState<Screen>(() => {
    const resumed = readRunning(userId, planId);
    return resumed ? { kind: "running", resumed } : { kind: "ready" };
  });
  const back = `/plans/${planId}`;
  const file = (log: ClassLog) => {
    const made = log.rehearsed && { id: log.sessionId, at: Date.parse(log.startedAt), rehearsed: log.rehearsed };
    setScreen({ kind: "done", log, isKept: made !== undefined && keepRehearsal(userId, planId, made) });
    dropRunning(userId, planId);
  };
  if (screen.kind === "ready") {
    return (
      <DraftReady
        card={card}
        settings={settings}
        back={back}
        onStart={() => setScreen({ kind: "running", resumed: null })}
      />
    );
  }
  if (screen.kind === "running") {
    return (
      <RehearsalScreen
        // A rehearsal that was begun goes on with the plan as it was then.
        card={screen.resumed?.card ?? card}
        of="a draft, not signed"
        settings={settings}
        resumed={screen.resumed}
        keep={(running) => keepRunning(userId, running)}
        onDone={file}
      />
    );
  }
  return <Done card={card} log={screen.log} isKept={screen.isKept} back={back} />;
}

interface DoneProps {
  readonly card: Card;
  readonly log: ClassLog;
  readonly isKept: boolean;
  readonly back: string;
}

function Done({ card, log, isKept, back }: DoneProps) {
  return (
    <RehearsalDone card={card} log={log}>
      <p>
        {isKept
          ? "It is saved in this browser, for you alone, until you sign out. You choose what of it goes into the plan."
          : "This browser could not save it. Allow this page to store data, then rehearse again."}
      </p>
      <a className="button button-strong" href={isKept ? `${back}${REHEARSALS_HASH}` : back}>
        {isKept ? "See it beside the plan" : "Back to the plan"}
      </a>
    </RehearsalDone>
  );
}
