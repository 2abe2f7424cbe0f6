"use client";
/** Why a *look again* may stay as it is. For leads. */
import { type FormEvent, type KeyboardEvent, useEffect, useId, useRef } from "react";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { SendButton } from "#app/_parts/send-button.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { PLACE } from "#app/_session/typed/typed-words.ts";
import { useTyped } from "#app/_session/typed/use-typed.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { ACCEPT } from "./accept-words.ts";
import styles from "./margin.module.css";
import { ACCEPT_AS_IT_IS } from "./margin-words.ts";

interface AcceptFormProps {
  readonly session: PlanSession;
  readonly finding: Finding;
  readonly onLeave: () => void;
}

const REASON_MAX = 1000;

export function AcceptForm(props: AcceptFormProps) {
  const { field, typed, sending, onSubmit, onKeyDown, leave } = useAccepting(props);
  const id = useId();
  return (
    <form className={styles.accept} onKeyDown={onKeyDown} onSubmit={onSubmit}>
      <div className="field">
        <label htmlFor={id}>{ACCEPT.label}</label>
        <textarea
          ref={field}
          id={id}
          rows={2}
          maxLength={REASON_MAX}
          value={typed.words}
          onChange={(event) => typed.set(event.target.value)}
          aria-describedby={`${id}-hint`}
        />
        <span className="hint" id={`${id}-hint`}>
          {ACCEPT.hint}
        </span>
      </div>
      <ProblemLine say={sending.problem} />
      <div className={styles.slipActs}>
        <SendButton busy={sending.busy} doing="Accepting…">
          {ACCEPT_AS_IT_IS}
        </SendButton>
        <button type="button" className="button button-quiet" onClick={leave}>
          Cancel
        </button>
      </div>
    </form>
  );
}

/** The reason on its way to the server. What was typed stays until it is accepted; Escape leaves an empty field. */
function useAccepting({ session, finding, onLeave }: AcceptFormProps) {
  const sending = useSend();
  const { key = "" } = finding;
  const at = { place: PLACE.accept(key), label: ACCEPT.label, items: finding.items, finding };
  const typed = useTyped(session, at);
  const field = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    // One that opens by itself, with words that were kept, leaves the keyboard where it is.
    if (field.current?.value === "") field.current.focus();
  }, []);
  const submit = async (reason: string) => {
    const { rule, items, message, values } = finding;
    const body = { finding: { rule, key, items, message, values }, reason };
    const made = await sending.run("POST", `/api/plans/${session.planId}/acceptances`, body);
    if (made === undefined) return field.current?.focus();
    session.say(ACCEPT.done);
    leave();
  };
  const leave = () => {
    typed.drop();
    onLeave();
  };
  const onSubmit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    void submit(typed.words);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "Escape") return;
    event.stopPropagation();
    if (typed.words.trim() === "") leave();
  };
  return { field, typed, sending, onSubmit, onKeyDown, leave };
}
