"use client";
/** What may be done with a move: edit it, copy it to a new one, take it out of the library, put it back. */
import Link from "next/link";
import { useRouter } from "next/navigation";
import { useState } from "react";
import { agree } from "#lib/plan/format.ts";
import { Dialog } from "../../_parts/dialog.tsx";
import { ProblemLine } from "../../_parts/problem-line.tsx";
import { type Sending, useSend } from "../../_parts/use-send.ts";
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
    setSaid(out ? `${name} was taken out of the library.` : `${name} is back in the library.`);
    router.refresh();
  };
  return (
    <div className={`acts ${styles.acts}`}>
      <EditLinks id={id} />
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
        <TakeOutDialog
          {...{ name, plans, sending }}
          onClose={() => setAsking(false)}
          onTakeOut={() => void store(true)}
        />
      ) : (
        <ProblemLine say={sending.problem} />
      )}
    </div>
  );
}

function EditLinks({ id }: { readonly id: string }) {
  return (
    <>
      <Link className="button button-strong" href={`/library/${id}/edit`}>
        Edit
      </Link>
      <Link className="button" href={`/library/new?from=${id}`}>
        Copy to a new move
      </Link>
    </>
  );
}

interface TakeOutProps extends Pick<MoveActsProps, "name" | "plans"> {
  readonly sending: Sending;
  readonly onClose: () => void;
  readonly onTakeOut: () => void;
}

function TakeOutDialog({ name, plans, sending, onClose, onTakeOut }: TakeOutProps) {
  return (
    <Dialog title={`Take ${name} out of the library?`} onClose={onClose}>
      <p>
        It is no longer offered for new items. {usesWords(plans)} Nothing is deleted: you can put it back at any time.
      </p>
      <ProblemLine say={sending.problem} />
      <p className={`acts ${styles.acts}`}>
        <button type="button" className="button" data-first onClick={onClose}>
          Leave it in
        </button>
        <button type="button" className="button button-must" aria-disabled={sending.busy} onClick={onTakeOut}>
          Take it out
        </button>
      </p>
    </Dialog>
  );
}

function usesWords(plans: number): string {
  if (plans === 0) return "No plan uses it.";
  return agree(plans, "The one plan that uses it keeps it.", `The ${plans} plans that use it keep it.`);
}
