"use client";
/** Asks for the proof and shows how far it is, and its answer. */
import { useEffect, useRef, useState } from "react";
import { LocalTime } from "#app/_parts/local-time.tsx";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { send } from "#app/_parts/send.ts";
import { proofSchema, type ShownProof } from "./proof-answer.ts";
import styles from "./record.module.css";

const ADDRESS = "/api/record/proof";
/** How often a running proof is looked at, ms. */
const LOOK_MS = 400;

export function VerifyNow() {
  const [proof, setProof] = useState<ShownProof | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const gone = useRef(false);
  useEffect(() => {
    gone.current = false;
    return () => {
      gone.current = true;
    };
  }, []);
  const busy = proof?.state === "running";

  const verify = async () => {
    if (busy) return;
    setProblem(null);
    let sent = await send("POST", ADDRESS, undefined, { reads: proofSchema });
    while (!gone.current) {
      if (!sent.ok) {
        setProof(null);
        setProblem(sent.message);
        return;
      }
      setProof(sent.value);
      if (sent.value.state !== "running") return;
      await new Promise((done) => setTimeout(done, LOOK_MS));
      sent = await send("GET", ADDRESS, undefined, { reads: proofSchema });
    }
  };

  return (
    <div className={styles.verify}>
      <button type="button" className="button" onClick={verify} aria-disabled={busy}>
        Verify now
      </button>
      <div role="status">{proof && <Answer proof={proof} />}</div>
      <ProblemLine say={problem} />
    </div>
  );
}

const count = (rows: number): string => rows.toLocaleString("en-GB");

function Answer({ proof }: { readonly proof: ShownProof }) {
  switch (proof.state) {
    case "running":
      return (
        <p>
          Checked {count(proof.rows)} of {count(proof.of)} rows…
        </p>
      );
    case "holds":
      return (
        <p className={styles.holds}>
          <b>The record holds:</b> all {count(proof.head.seq)} rows, and everything they are about, are as they were
          written. Verified <LocalTime at={proof.at} />.
        </p>
      );
    case "broken":
      return (
        <p className="problem">
          <b>The record does not hold.</b> {proof.fault.say} Keep this database as it is, and compare a backup from
          before.
        </p>
      );
    default:
      return (
        <p className="problem">
          The proof did not reach its end. Run “npm run -s record -- verify” on the server, which says why.
        </p>
      );
  }
}
