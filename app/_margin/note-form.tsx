"use client";
import { type FormEvent, type ReactNode, useId, useRef, useState } from "react";
/**
 * A note that goes with a step, and the step's button. What was typed stays until the server has accepted it, also when the dialog
 * is closed.
 */
import { useFormats } from "#app/_parts/formats.tsx";
import type { TypedField } from "#app/_session/typed/use-typed.ts";
import type { RefusedRequest, Sent } from "../_parts/send.ts";
import styles from "./margin.module.css";
import { stepRefusedWords } from "./step-refused.ts";

interface Props {
  readonly note: TypedField;
  readonly label: string;
  readonly verb: string;
  /** Said when nothing was written; undefined: the note is optional. */
  readonly required?: string;
  readonly submit: (note: string) => Promise<Sent>;
  readonly onDone: () => void;
  readonly onLeave: () => void;
  readonly onRefused?: (sent: RefusedRequest) => void;
  /** Id of what says why the step cannot be taken now; the button is disabled then. */
  readonly blockedBy?: string;
  readonly children?: ReactNode;
}

const MAX_NOTE = 4000;
const NOTE_KEPT = "You began this earlier. It is kept until you send it.";

export function NoteForm(props: Props) {
  const { note, label, verb, required, onLeave, blockedBy } = props;
  const { wasKept, problem, busy, field, go } = useNote(props);
  const id = useId();
  return (
    <form className={styles.dialog} onSubmit={go}>
      <div className="field">
        <label htmlFor={id}>{label}</label>
        <textarea
          ref={field}
          data-first=""
          id={id}
          rows={3}
          maxLength={MAX_NOTE}
          value={note.words}
          onChange={(event) => note.set(event.target.value)}
          aria-invalid={problem !== null && required !== undefined && note.words.trim() === ""}
          aria-describedby={problem === null ? undefined : `${id}-problem`}
        />
        {wasKept && <span className="hint">{NOTE_KEPT}</span>}
      </div>
      <p role="alert" id={`${id}-problem`} className={problem === null ? "visually-hidden" : "problem"}>
        {problem}
      </p>
      {props.children}
      <div className={styles.dialogActs}>
        <button type="button" className="button button-quiet" onClick={onLeave}>
          Not now
        </button>
        <Send busy={busy} blockedBy={blockedBy} verb={verb} />
      </div>
    </form>
  );
}

interface SendProps extends Pick<Props, "verb"> {
  readonly busy: boolean;
  readonly blockedBy: string | undefined;
}

const Send = ({ busy, blockedBy, verb }: SendProps) => (
  <button
    type="submit"
    className="button button-strong"
    aria-disabled={busy || blockedBy !== undefined}
    aria-describedby={blockedBy}
  >
    {busy ? "Sending…" : verb}
  </button>
);

/** The note as typed, and its sending: asked for where it is required, sent once at a time. */
function useNote({ note, required, submit, onDone, onRefused, blockedBy }: Props) {
  const f = useFormats();
  const [wasKept] = useState(note.words !== "");
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const field = useRef<HTMLTextAreaElement>(null);
  async function go(event: FormEvent) {
    event.preventDefault();
    if (busy || blockedBy !== undefined) return;
    if (required !== undefined && note.words.trim() === "") {
      setProblem(required);
      field.current?.focus();
      return;
    }
    setBusy(true);
    setProblem(null);
    const sent = await submit(note.words.trim());
    setBusy(false);
    if (sent.ok) {
      note.drop();
      return onDone();
    }
    setProblem(stepRefusedWords(sent, f));
    onRefused?.(sent);
  }
  return { wasKept, problem, busy, field, go };
}
