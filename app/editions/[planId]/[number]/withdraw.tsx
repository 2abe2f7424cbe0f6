"use client";
/** Takes the edition out of use. The reason is asked for first: it is what the devices show. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import styles from "./edition.module.css";

interface Props {
  readonly url: string;
  readonly number: number;
}

export function Withdraw({ url, number }: Props) {
  const router = useRouter();
  const sending = useSend();
  const [reason, setReason] = useState("");
  const withdraw = async (event: FormEvent) => {
    event.preventDefault();
    if ((await sending.run("POST", url, { reason })) !== undefined) router.refresh();
  };
  return (
    <form className={styles.withdraw} onSubmit={withdraw}>
      <h2>Withdraw it</h2>
      <p>
        No device starts a class from edition {number} any more; one that is off the network learns of it when it is
        next in contact. A class that runs is told, not stopped. This cannot be taken back: a new sign-off makes the
        next edition.
      </p>
      <label>
        Why, as the devices show it
        <textarea value={reason} onChange={(event) => setReason(event.target.value)} maxLength={200} required />
      </label>
      <ProblemLine say={sending.problem} />
      <button type="submit" className="button button-must" aria-disabled={sending.busy}>
        Withdraw edition {number}
      </button>
    </form>
  );
}
