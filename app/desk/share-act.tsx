"use client";
/** Shares a plan with the team or stops sharing it, after saying who will then see it. */
import { useRouter } from "next/navigation";
import { useState } from "react";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import { teamWords } from "./act-words.ts";
import styles from "./desk.module.css";

interface ShareActProps {
  readonly id: string;
  readonly title: string;
  readonly team: boolean;
}

export function ShareAct({ id, title, team }: ShareActProps) {
  const router = useRouter();
  const sending = useSend();
  const [asked, setAsked] = useState(false);
  const words = teamWords(team);
  const of = <span className="visually-hidden"> {title}</span>;
  const share = async () => {
    const done = await sending.run("PATCH", `/api/plans/${id}`, { team: !team });
    setAsked(false);
    if (done !== undefined) router.refresh();
  };
  if (!asked) {
    return (
      <>
        <button type="button" className="act" onClick={() => setAsked(true)}>
          {words.act}
          {of}
        </button>
        <ProblemLine say={sending.problem} />
      </>
    );
  }
  return (
    <>
      <span role="status" className={styles.ask}>
        {words.ask}
      </span>
      <button type="button" className="act" onClick={share} aria-disabled={sending.busy}>
        {words.sure}
        {of}
      </button>
      <button type="button" className="act" onClick={() => setAsked(false)}>
        {words.keep}
        {of}
      </button>
    </>
  );
}
