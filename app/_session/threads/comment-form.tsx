"use client";
/** A field for a comment. What was typed stays until the server has it; a refusal is shown beside it. */
import { type FormEvent, type KeyboardEvent, useEffect, useId, useRef, useState } from "react";
import type { Sent } from "../../_parts/send.ts";
import styles from "./threads.module.css";

/** Letters; the server has a limit of its own. This one keeps a slip readable. */
const MAX_COMMENT = 4000;

interface CommentFormProps {
  readonly label: string;
  /** What the button does: a verb. */
  readonly verb: string;
  readonly post: (body: string) => Promise<Sent>;
  readonly onPosted: () => void;
  readonly onLeave: () => void;
  readonly focus?: boolean;
}

export function CommentForm({ label, verb, post, onPosted, onLeave, focus = true }: CommentFormProps) {
  const { body, setBody, problem, busy, field, submit, onSubmit } = useComment({ post, onPosted, focus });
  const id = useId();
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) void submit();
    if (event.key !== "Escape") return;
    event.stopPropagation();
    if (body.trim() === "") onLeave();
  };
  return (
    <form className={styles.form} onSubmit={onSubmit}>
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
      <Problem id={`${id}-problem`} problem={problem} />
      <div className={styles.acts}>
        <button type="submit" className="button" aria-disabled={busy}>
          {busy ? "Sending…" : verb}
        </button>
        <button type="button" className="button button-quiet" onClick={onLeave}>
          Cancel
        </button>
      </div>
    </form>
  );
}

/** Always on the page, so that a screen reader hears it change. */
function Problem({ id, problem }: { readonly id: string; readonly problem: string | null }) {
  return (
    <p role="alert" id={id} className={problem === null ? "visually-hidden" : "problem"}>
      {problem}
    </p>
  );
}

/** What is typed, on its way to the server. */
function useComment({ post, onPosted, focus }: Pick<CommentFormProps, "post" | "onPosted" | "focus">) {
  const [body, setBody] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const field = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    if (focus) field.current?.focus();
  }, [focus]);

  const refuse = (message: string) => {
    setProblem(message);
    field.current?.focus();
  };
  async function submit() {
    if (busy) return;
    if (body.trim() === "") return refuse("Write your comment first.");
    setBusy(true);
    setProblem(null);
    const sent = await post(body.trim());
    setBusy(false);
    if (!sent.ok) return refuse(sent.message);
    setBody("");
    onPosted();
  }
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    void submit();
  };
  return { body, setBody, problem, busy, field, submit, onSubmit };
}
