"use client";
/** What can be done to a plan from the desk. A plan that was signed is archived, any other is deleted; each after a question. */
import { useRouter } from "next/navigation";
import { useState } from "react";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import { ARCHIVE_WORDS, DELETE_WORDS } from "./act-words.ts";
import styles from "./desk.module.css";
import { madeSchema } from "./made-plan.ts";

interface PlanActsProps {
  readonly id: string;
  readonly title: string;
  readonly mayDelete: boolean;
  /** It has been signed at least once. */
  readonly signed: boolean;
}

export function PlanActs({ id, title, mayDelete, signed }: PlanActsProps) {
  const router = useRouter();
  const sending = useSend();
  const of = <span className="visually-hidden"> {title}</span>;
  const duplicate = async () => {
    const made = await sending.run("POST", `/api/plans/${id}/duplicate`, {}, { reads: madeSchema });
    if (made) router.push(`/plans/${made.id}`);
  };
  const remove = async () => {
    const done = signed
      ? await sending.run("POST", `/api/plans/${id}/archive`, { archived: true })
      : await sending.run("DELETE", `/api/plans/${id}`);
    if (done !== undefined) router.refresh();
  };
  return (
    <>
      <button type="button" className="act" onClick={duplicate} aria-disabled={sending.busy}>
        Duplicate{of}
      </button>
      <a className="act" href={`/api/plans/${id}/file`} download>
        Save as a file{of}
      </a>
      {mayDelete ? <RemoveAct signed={signed} title={title} busy={sending.busy} onRemove={remove} /> : null}
      <ProblemLine say={sending.problem} />
    </>
  );
}

interface RemoveActProps extends Pick<PlanActsProps, "signed" | "title"> {
  readonly busy: boolean;
  readonly onRemove: () => Promise<void>;
}

/** Both ways are asked about, and both can be undone further down on the desk. */
function RemoveAct({ signed, title, busy, onRemove }: RemoveActProps) {
  const [asked, setAsked] = useState(false);
  const words = signed ? ARCHIVE_WORDS : DELETE_WORDS;
  const of = <span className="visually-hidden"> {title}</span>;
  if (!asked) {
    return (
      <button type="button" className="act" onClick={() => setAsked(true)} aria-disabled={busy}>
        {words.act}
        {of}
      </button>
    );
  }
  const remove = async () => {
    await onRemove();
    setAsked(false);
  };
  return (
    <>
      <span role="status" className={styles.ask}>
        {words.ask}
      </span>
      <button type="button" className="act" onClick={remove} aria-disabled={busy}>
        {words.sure}
        {of}
      </button>
      <button type="button" className="act" onClick={() => setAsked(false)}>
        Keep it{of}
      </button>
    </>
  );
}
