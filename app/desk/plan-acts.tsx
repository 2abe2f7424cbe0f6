"use client";
/** What can be done to a plan from the desk. What was signed is archived; anything else is deleted, after a question. */
import { useRouter } from "next/navigation";
import { useState } from "react";
import { Problem } from "../_parts/problem.tsx";
import { useSend } from "../_parts/use-send.ts";

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
  const [gone, setGone] = useState(false);
  const [asked, setAsked] = useState(false);
  const of = <span className="visually-hidden"> {title}</span>;

  const duplicate = async () => {
    const made = await sending.run<{ id: string }>("POST", `/api/plans/${id}/duplicate`, {});
    if (made) router.push(`/plans/${made.id}`);
  };
  const remove = async () => {
    const done = signed
      ? await sending.run("POST", `/api/plans/${id}/archive`, { archived: true })
      : await sending.run("DELETE", `/api/plans/${id}`);
    setAsked(false);
    if (done === undefined) return;
    setGone(true);
    router.refresh();
  };
  return (
    <>
      <button type="button" className="act" onClick={duplicate} aria-disabled={sending.busy} disabled={gone}>
        Duplicate{of}
      </button>
      <a className="act" href={`/api/plans/${id}/file`} download>
        Save as a file{of}
      </a>
      {mayDelete && !asked ? (
        <button
          type="button"
          className="act"
          onClick={signed ? remove : () => setAsked(true)}
          aria-disabled={sending.busy}
          disabled={gone}
        >
          {signed ? "Archive" : "Delete"}
          {of}
        </button>
      ) : null}
      {asked ? (
        <>
          <button type="button" className="act" onClick={remove} aria-disabled={sending.busy}>
            Delete it?{of}
          </button>
          <button type="button" className="act" onClick={() => setAsked(false)}>
            Keep{of}
          </button>
        </>
      ) : null}
      <Problem say={sending.problem} />
    </>
  );
}
