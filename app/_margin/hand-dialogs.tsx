"use client";
/** Offering a plan to the leads for reading, and returning it with what should be changed. */
import { useRef, useState } from "react";
import type { PlanSession } from "#app/_session/session.ts";
import { PLACE } from "#app/_session/typed/typed-words.ts";
import { useTyped } from "#app/_session/typed/use-typed.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { FindingList } from "../_parts/finding-list.tsx";
import { send } from "../_parts/send.ts";
import { HAND_BACK, HAND_IN, handBackWords } from "./hand-words.ts";
import { MainPoints } from "./main-points.tsx";
import { NoteForm } from "./note-form.tsx";
import { OTHER_READER_ID, OtherReader, otherReader } from "./other-reader.tsx";
import { ROUND_OVER_ID, RoundOver, useRoundHere } from "./round-over.tsx";
import { StateDialog } from "./state-dialog.tsx";

interface Props {
  readonly session: PlanSession;
  readonly onClosed: () => void;
}

/** What must be fixed is shown but does not prevent offering for reading: the author may need a lead's help with it. */
export function HandInDialog({ session, onClosed }: Props) {
  const { findings, moreToCheck, saveState } = useSnapshot(session);
  const closer = useRef<(() => void) | null>(null);
  const mustFix = findings.filter((f) => f.level === "must");
  const body = (note: string) => (note === "" ? {} : { note });
  const note = useTyped(session, { place: PLACE.offer, label: HAND_IN.note, items: [] });
  return (
    <StateDialog title="Offer for reading" onClosed={onClosed} closer={closer}>
      {mustFix.length > 0 ? (
        <div>
          <p>{HAND_IN.mustFix}</p>
          <FindingList findings={mustFix} />
        </div>
      ) : (
        <p>{moreToCheck ? HAND_IN.nothingSoFar : HAND_IN.nothing}</p>
      )}
      {saveState !== "saved" && <p className="notice">{HAND_IN.unsaved}</p>}
      <NoteForm
        note={note}
        label={HAND_IN.note}
        verb="Offer for reading"
        submit={(note) => send("POST", `/api/plans/${session.planId}/hand-in`, body(note))}
        onDone={() => {
          session.say(HAND_IN.done);
          closer.current?.();
        }}
        onLeave={() => closer.current?.()}
      />
    </StateDialog>
  );
}

/** With up to three main points, which the author sees first. */
export function HandBackDialog({ session, onClosed }: Props) {
  const { threads, state } = useSnapshot(session);
  const round = useRoundHere(state, session.me.id);
  const note = useTyped(session, { place: PLACE.returning, label: HAND_BACK.note, items: [], round: round.number });
  const kept = useTyped(session, { place: PLACE.mainPoints, label: HAND_BACK.mainPoints, items: [] });
  const points = kept.words === "" ? [] : kept.words.split("\n");
  const [sure, setSure] = useState(false);
  const closer = useRef<(() => void) | null>(null);
  const open = threads.filter((thread) => !thread.settled).length;
  const other = otherReader(state, session.me.id);
  const mainPoints = points.map((point) => point.trim()).filter((point) => point !== "");
  return (
    <StateDialog title="Return with notes" onClosed={onClosed} closer={closer}>
      <p>{handBackWords(state.handedInBy, open)}</p>
      <RoundOver state={state} round={round} />
      <NoteForm
        note={note}
        label={HAND_BACK.note}
        verb="Return with notes"
        required={HAND_BACK.required}
        submit={(words) => {
          const body = { note: words, mainPoints, ...round.sent };
          return send("POST", `/api/plans/${session.planId}/hand-back`, body);
        }}
        {...(round.isOver ? { blockedBy: ROUND_OVER_ID } : other && !sure ? { blockedBy: OTHER_READER_ID } : {})}
        onDone={() => {
          kept.drop();
          session.say(HAND_BACK.done);
          closer.current?.();
        }}
        onLeave={() => closer.current?.()}
      >
        <MainPoints points={points} onChange={(next) => kept.set(next.join("\n"))} />
        {other && <OtherReader reader={other} act={HAND_BACK.allTheSame} sure={sure} onSure={setSure} />}
      </NoteForm>
    </StateDialog>
  );
}
