"use client";
/** Declining a proposal with a word. What was typed stays until the server has it. */
import { type FormEvent, useEffect, useId, useRef, useState } from "react";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { SendButton } from "#app/_parts/send-button.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import type { ProposalView } from "#lib/protocol/messages.ts";
import { focusNear } from "./focus-near.ts";
import styles from "./propose.module.css";
import { TAKE } from "./propose-words.ts";
import { postDecline } from "./take.ts";

const MAX_WORD = 2000;

interface DeclineFormProps {
  readonly session: PlanSession;
  readonly proposal: ProposalView;
  readonly onLeave: () => void;
}

export function DeclineForm({ session, proposal, onLeave }: DeclineFormProps) {
  const { word, setWord, problem, busy, field, decline } = useDeclining(session, proposal);
  const id = useId();
  return (
    <form className={styles.decline} onSubmit={decline}>
      <div className="field">
        <label htmlFor={id}>{TAKE.declineWord}</label>
        <textarea
          ref={field}
          id={id}
          rows={2}
          maxLength={MAX_WORD}
          value={word}
          aria-invalid={problem !== null && word.trim() === ""}
          onChange={(event) => setWord(event.target.value)}
        />
      </div>
      <ProblemLine say={problem} />
      <div className="acts">
        <SendButton busy={busy} doing="Sending…">
          {TAKE.declineVerb}
        </SendButton>
        <button type="button" className="button button-quiet" onClick={onLeave}>
          {TAKE.notNow}
        </button>
      </div>
    </form>
  );
}

function useDeclining(session: PlanSession, proposal: ProposalView) {
  const [word, setWord] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const field = useRef<HTMLTextAreaElement>(null);
  useEffect(() => field.current?.focus(), []);
  async function decline(event: FormEvent) {
    event.preventDefault();
    if (busy) return;
    if (word.trim() === "") {
      setProblem(TAKE.declineEmpty);
      return field.current?.focus();
    }
    setBusy(true);
    setProblem(null);
    const sent = await postDecline(proposal.id, word.trim());
    setBusy(false);
    if (!sent.ok) return setProblem(sent.message);
    session.say(TAKE.declined(proposal.byName));
    focusNear();
  }
  return { word, setWord, problem, busy, field, decline };
}
