"use client";
/** What can be done to a plan from the desk. Deleting needs no question: it has a way back, offered at once. */
import { useRouter } from "next/navigation";
import { useState } from "react";
import { Problem } from "../_shell/problem.tsx";
import { useSend } from "../_shell/use-send.ts";
import styles from "./desk.module.css";

interface PlanActsProps {
  readonly id: string;
  readonly title: string;
  readonly mayDelete: boolean;
}

export function PlanActs({ id, title, mayDelete }: PlanActsProps) {
  const router = useRouter();
  const sending = useSend();
  const [gone, setGone] = useState(false);
  const of = <span className="visually-hidden"> {title}</span>;

  const duplicate = async () => {
    const made = await sending.run<{ id: string }>("POST", `/api/plans/${id}/duplicate`, {});
    if (made) router.push(`/plans/${made.id}`);
  };
  const remove = async () => {
    if ((await sending.run("DELETE", `/api/plans/${id}`)) === undefined) return;
    setGone(true);
    router.refresh();
  };
  return (
    <>
      <button type="button" className={styles.act} onClick={duplicate} aria-disabled={sending.busy} disabled={gone}>
        Duplicate{of}
      </button>
      <a className={styles.act} href={`/api/plans/${id}/file`} download>
        Save as a file{of}
      </a>
      {mayDelete ? (
        <button type="button" className={styles.act} onClick={remove} aria-disabled={sending.busy} disabled={gone}>
          Delete{of}
        </button>
      ) : null}
      <Problem say={sending.problem} />
    </>
  );
}
