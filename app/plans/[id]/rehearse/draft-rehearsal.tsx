"use client";
/** A draft rehearsed: the last look, the run, and the way back to the plan with what was measured. */
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
        // What was begun goes on, whatever the plan says meanwhile.
        card={screen.resumed?.card ?? card}
        of="a draft, not signed"
        settings={settings}
        resumed={screen.resumed}
        keep={(running) => keepRunning(userId, running)}
        onDone={file}
      />
    );
  }
  return (
    <RehearsalDone card={card} log={screen.log}>
      <p>
        {screen.isKept
          ? "It is kept in this browser, for you alone, until you sign out. What you take of it into the plan is yours to choose."
          : "This browser would not keep it: allow the page its storage, and rehearse again."}
      </p>
      <a className="button button-strong" href={screen.isKept ? `${back}${REHEARSALS_HASH}` : back}>
        {screen.isKept ? "See it beside the plan" : "Back to the plan"}
      </a>
    </RehearsalDone>
  );
}
