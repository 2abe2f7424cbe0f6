"use client";
/** A field for a comment. What was typed stays until the server has it; a refusal is said beside it. */
import { type FormEvent, type KeyboardEvent, useEffect, useId, useRef, useState } from "react";
import type { Sent } from "../../_parts/send.ts";
import styles from "./threads.module.css";

/** The server's own limit is asked at the server; this keeps a slip readable. */
const MAX_COMMENT = 4000;

interface Props {
  readonly label: string;
  /** What the button says: a verb. */
  readonly verb: string;
  readonly post: (body: string) => Promise<Sent>;
  readonly onPosted: () => void;
  readonly onLeave: () => void;
  readonly focus?: boolean;
}

export function CommentForm({ label, verb, post, onPosted, onLeave, focus = true }: Props) {
  const [body, setBody] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const field = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  useEffect(() => {
    if (focus) field.current?.focus();
  }, [focus]);

  async function submit(event?: FormEvent) {
    event?.preventDefault();
    if (busy) return;
    if (body.trim() === "") {
      setProblem("Write something first.");
      field.current?.focus();
      return;
    }
    setBusy(true);
    setProblem(null);
    const sent = await post(body.trim());
    setBusy(false);
    if (sent.ok) {
      setBody("");
      onPosted();
    } else {
      setProblem(sent.message);
      field.current?.focus();
    }
  }

  function onKeyDown(event: KeyboardEvent) {
    if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) void submit();
    if (event.key !== "Escape") return;
    event.stopPropagation();
    if (body.trim() === "") onLeave();
  }

  return (
    <form className={styles.form} onSubmit={submit}>
      <div className="field">
        <label htmlFor={id}>{label}</label>
        <textarea
          ref={field}
          id={id}
          rows={3}
          maxLength={MAX_COMMENT}
          value={body}
          onChange={(event) => setBody(event.target.value)}
          onKeyDown={onKeyDown}
          aria-invalid={problem !== null}
          aria-describedby={problem === null ? undefined : `${id}-problem`}
        />
      </div>
      <p role="alert" id={`${id}-problem`} className={problem === null ? "visually-hidden" : "problem"}>
        {problem}
      </p>
      <div className={styles.acts}>
        <button type="submit" className="button" aria-disabled={busy}>
          {busy ? "Sending…" : verb}
        </button>
        <button type="button" className="button button-quiet" onClick={onLeave}>
          Leave it
        </button>
      </div>
    </form>
  );
}
