"use client";
/** What may be done with a move: edit, copy as a start for another, take out of the library, put back. */
import Link from "next/link";
import { useRouter } from "next/navigation";
import { useState } from "react";
import { agree } from "#lib/plan/format.ts";
import { Dialog } from "../../_parts/dialog.tsx";
import { Problem } from "../../_parts/problem.tsx";
import { useSend } from "../../_parts/use-send.ts";
import styles from "./move.module.css";

interface MoveActsProps {
  readonly id: string;
  readonly name: string;
  readonly updatedAt: number;
  readonly archived: boolean;
  /** How many plans use it, those that the person may not read too. */
  readonly plans: number;
}

export function MoveActs({ id, name, updatedAt, archived, plans }: MoveActsProps) {
  const router = useRouter();
  const sending = useSend();
  const [asking, setAsking] = useState(false);
  const [said, setSaid] = useState("");
  const store = async (out: boolean) => {
    const sent = await sending.run("POST", `/api/library/${id}/archive`, { archived: out, base: updatedAt });
    if (sent === undefined) return;
    setAsking(false);
    setSaid(out ? `${name} is taken out.` : `${name} is offered again.`);
    router.refresh();
  };
  return (
    <div className={`acts ${styles.acts}`}>
      <Link className="button button-strong" href={`/library/${id}/edit`}>
        Edit
      </Link>
      <Link className="button" href={`/library/new?from=${id}`}>
        Copy as a start
      </Link>
      {archived ? (
        <button type="button" className="button" aria-disabled={sending.busy} onClick={() => void store(false)}>
          Put back
        </button>
      ) : (
        <button type="button" className="button" onClick={() => setAsking(true)}>
          Take out
        </button>
      )}
      <p role="status" className="visually-hidden">
        {said}
      </p>
      {asking ? (
        <Dialog title={`Take ${name} out of the library?`} onClose={() => setAsking(false)}>
          <p>
            It is not offered any more for new items. {usesWords(plans)} Nothing is deleted: it can be put back at any
            time.
          </p>
          <Problem say={sending.problem} />
          <p className={`acts ${styles.acts}`}>
            <button type="button" className="button" data-first onClick={() => setAsking(false)}>
              Leave it in
            </button>
            <button
              type="button"
              className="button button-must"
              aria-disabled={sending.busy}
              onClick={() => void store(true)}
            >
              Take it out
            </button>
          </p>
        </Dialog>
      ) : (
        <Problem say={sending.problem} />
      )}
    </div>
  );
}

function usesWords(plans: number): string {
  if (plans === 0) return "No plan uses it.";
  return agree(plans, "The one plan that uses it keeps it.", `The ${plans} plans that use it keep it.`);
}
