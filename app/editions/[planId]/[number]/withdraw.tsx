"use client";
/** Withdraws the edition. It asks for a reason first, which the devices show. */
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
      <h2>Withdraw this edition</h2>
      <p>
        Devices will no longer start a class from edition {number}. A device that is offline learns of it when it is
        next online. Where a class of it is running, the coach is asked whether to go on; nothing stops by itself. This
        cannot be undone: a new sign-off makes the next edition.
      </p>
      <label>
        Reason, shown on the devices
        <textarea value={reason} onChange={(event) => setReason(event.target.value)} maxLength={200} required />
      </label>
      <ProblemLine say={sending.problem} />
      <button type="submit" className="button button-must" aria-disabled={sending.busy}>
        Withdraw edition {number}
      </button>
    </form>
  );
}
