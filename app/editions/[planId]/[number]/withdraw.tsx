"use client";
/** Withdraws the edition. It asks for a reason, which the devices show, and once more before it is done: it cannot be undone. */
import { useRouter } from "next/navigation";
import { type FormEvent, type RefObject, useEffect, useRef, useState } from "react";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { type Sending, useSend } from "#app/_parts/use-send.ts";
import styles from "./edition.module.css";

interface Props {
  readonly url: string;
  readonly number: number;
  /** Who withdrew it and why; null while it stands. */
  readonly withdrawn: string | null;
}

/** What was done is said where it was done, and has the keyboard; the page says it at its head from then on. */
export function Withdraw({ url, number, withdrawn }: Props) {
  const { step, setStep, reason, setReason, sending, withdraw } = useWithdrawing(url);
  const ask = (event: FormEvent) => {
    event.preventDefault();
    if (reason.trim() !== "") setStep("asks");
  };
  if (step === "done") return <Done number={number} withdrawn={withdrawn} />;
  if (withdrawn !== null) return null;
  return (
    <form className={styles.withdraw} onSubmit={ask}>
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
      {step === "asks" ? (
        <Sure {...{ number, sending, withdraw }} onKeep={() => setStep("writing")} />
      ) : (
        <button type="submit" className="button button-must">
          Withdraw edition {number}
        </button>
      )}
    </form>
  );
}

function useWithdrawing(url: string) {
  const router = useRouter();
  const sending = useSend();
  const [reason, setReason] = useState("");
  const [step, setStep] = useState<"writing" | "asks" | "done">("writing");
  const withdraw = async () => {
    if ((await sending.run("POST", url, { reason })) === undefined) return;
    setStep("done");
    router.refresh();
  };
  return { step, setStep, reason, setReason, sending, withdraw };
}

interface SureProps {
  readonly number: number;
  readonly sending: Sending;
  readonly withdraw: () => Promise<void>;
  readonly onKeep: () => void;
}

function Sure({ number, sending, withdraw, onKeep }: SureProps) {
  const keep = useFocusedAtFirst<HTMLButtonElement>();
  return (
    <section aria-label={`Withdraw edition ${number}?`} className="notice">
      <p>Withdraw edition {number} for good? Nobody can start a class from it after that.</p>
      <div className="acts">
        <button ref={keep} type="button" className="button" onClick={onKeep}>
          Keep the edition
        </button>
        <button
          type="button"
          className="button button-must"
          aria-disabled={sending.busy}
          onClick={() => void withdraw()}
        >
          Withdraw it for good
        </button>
      </div>
    </section>
  );
}

function Done({ number, withdrawn }: Pick<Props, "number" | "withdrawn">) {
  const done = useFocusedAtFirst<HTMLElement>();
  return (
    <section ref={done} tabIndex={-1} className={styles.withdraw}>
      <p className="notice">
        Edition {number} is withdrawn. {withdrawn} No device starts it any more.
      </p>
    </section>
  );
}

function useFocusedAtFirst<E extends HTMLElement>(): RefObject<E | null> {
  const element = useRef<E>(null);
  useEffect(() => element.current?.focus(), []);
  return element;
}
