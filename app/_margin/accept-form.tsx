"use client";
/** Why a *look again* may stay as it is. For leads. */
import { type FormEvent, type KeyboardEvent, useEffect, useId, useRef } from "react";
import { textOf } from "#app/_parts/form-field.tsx";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { SendButton } from "#app/_parts/send-button.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import type { PlanSession } from "#app/_session/session.ts";
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
  const { field, sending, onSubmit, onKeyDown } = useAccepting(props);
  const id = useId();
  return (
    <form className={styles.accept} onKeyDown={onKeyDown} onSubmit={onSubmit}>
      <div className="field">
        <label htmlFor={id}>{ACCEPT.label}</label>
        <textarea ref={field} id={id} name="reason" rows={2} maxLength={REASON_MAX} aria-describedby={`${id}-hint`} />
        <span className="hint" id={`${id}-hint`}>
          {ACCEPT.hint}
        </span>
      </div>
      <ProblemLine say={sending.problem} />
      <div className={styles.slipActs}>
        <SendButton busy={sending.busy} doing="Accepting…">
          {ACCEPT_AS_IT_IS}
        </SendButton>
        <button type="button" className="button button-quiet" onClick={props.onLeave}>
          Cancel
        </button>
      </div>
    </form>
  );
}

/** The reason on its way to the server. What was typed stays when it is refused; Escape leaves an empty field. */
function useAccepting({ session, finding, onLeave }: AcceptFormProps) {
  const sending = useSend();
  const field = useRef<HTMLTextAreaElement>(null);
  useEffect(() => field.current?.focus(), []);
  const submit = async (reason: string) => {
    const { rule, key = "", items, message, values } = finding;
    const body = { finding: { rule, key, items, message, values }, reason };
    const made = await sending.run("POST", `/api/plans/${session.planId}/acceptances`, body);
    if (made === undefined) return field.current?.focus();
    session.say(ACCEPT.done);
    onLeave();
  };
  const onSubmit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    void submit(textOf(new FormData(event.currentTarget), "reason"));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "Escape") return;
    event.stopPropagation();
    if (field.current?.value.trim() === "") onLeave();
  };
  return { field, sending, onSubmit, onKeyDown };
}
