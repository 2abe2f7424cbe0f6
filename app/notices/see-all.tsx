"use client";
/** Marks everything as seen, in one act. */
import { useRouter } from "next/navigation";
import { useState } from "react";
import { newWords } from "#lib/notices/notice-words.ts";
import { sentenceCase } from "#lib/plan/format.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./notices.module.css";
import { allSeenWords } from "./notices-words.ts";

interface SeeAllProps {
  readonly unseen: number;
  /** The id of the newest notice on the page. */
  readonly upTo: number;
}

export function SeeAll({ unseen, upTo }: SeeAllProps) {
  const router = useRouter();
  const sending = useSend();
  const [done, setDone] = useState(false);
  const see = async () => {
    if (unseen === 0 || (await sending.run("POST", "/api/notices/seen", { upTo })) === undefined) return;
    setDone(true);
    router.refresh();
  };
  return (
    <>
      <div className={styles.count}>
        <p role="status">{done && unseen === 0 ? allSeenWords : `${sentenceCase(newWords(unseen))}.`}</p>
        <button type="button" className="button" aria-disabled={unseen === 0 || sending.busy} onClick={see}>
          Mark all as seen
        </button>
      </div>
      <ProblemLine say={sending.problem} />
    </>
  );
}
