"use client";
/** Handing a plan in to the leads, and handing it back with what is to be changed. */
import { useRef } from "react";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { agree } from "#lib/plan/format.ts";
import { FindingList } from "../_parts/finding-list.tsx";
import { send } from "../_parts/send.ts";
import { NoteForm } from "./note-form.tsx";
import { StateDialog } from "./state-dialog.tsx";

interface Props {
  readonly session: PlanSession;
  readonly onClosed: () => void;
}

/** What must be fixed is shown and does not stop it: a lead's eye may be what it needs. */
export function HandInDialog({ session, onClosed }: Props) {
  const { findings, saveState } = useSnapshot(session);
  const closer = useRef<(() => void) | null>(null);
  const mustFix = findings.filter((f) => f.level === "must");
  const body = (note: string) => (note === "" ? {} : { note });
  return (
    <StateDialog title="Hand in to a lead" onClosed={onClosed} closer={closer}>
      {mustFix.length > 0 ? (
        <div>
          <p>It can be handed in as it is, but not signed off until this is fixed:</p>
          <FindingList findings={mustFix} />
        </div>
      ) : (
        <p>Nothing has to be fixed first.</p>
      )}
      {saveState !== "saved" && (
        <p className="notice">Not everything you wrote is on the server yet. A lead sees what is there.</p>
      )}
      <NoteForm
        label="A note to the lead (may be left out)"
        verb="Hand in"
        submit={(note) => send("POST", `/api/plans/${session.planId}/hand-in`, body(note))}
        onDone={() => {
          session.say("Handed in.");
          closer.current?.();
        }}
        onLeave={() => closer.current?.()}
      />
    </StateDialog>
  );
}

export function HandBackDialog({ session, onClosed }: Props) {
  const { threads, state } = useSnapshot(session);
  const closer = useRef<(() => void) | null>(null);
  const open = threads.filter((thread) => !thread.settled).length;
  return (
    <StateDialog title="Hand back" onClosed={onClosed} closer={closer}>
      <p>
        {state.handedInBy ?? "Whoever wrote it"} gets the plan back with your note
        {open === 0 ? "." : agree(open, " and the open thread.", ` and the ${open} open threads.`)}
      </p>
      <NoteForm
        label="What is to be changed"
        verb="Hand back"
        required="Say what is to be changed: whoever wrote the plan goes by it."
        submit={(note) => send("POST", `/api/plans/${session.planId}/hand-back`, { note })}
        onDone={() => {
          session.say("Handed back.");
          closer.current?.();
        }}
        onLeave={() => closer.current?.()}
      />
    </StateDialog>
  );
}
