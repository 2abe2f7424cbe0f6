"use client";
/** Opens the reading of a month, and again after a refusal. What is shown is what will be signed. */
import { useCallback, useEffect, useRef, useState } from "react";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { send } from "#app/_parts/send.ts";
import type { OpenedMonth } from "./opened-month.ts";
import { SignOff } from "./sign-off.tsx";

export function OpenSignOff({ month }: { readonly month: string }) {
  const [reading, setReading] = useState<OpenedMonth | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [note, setNote] = useState("");
  const asked = useRef(false);
  const read = useCallback(async () => {
    const sent = await send<OpenedMonth>("POST", `/api/programme/${month}/read`);
    setProblem(sent.ok ? null : sent.message);
    if (sent.ok) setReading(sent.value);
  }, [month]);
  useEffect(() => {
    if (asked.current) return; // strict mode runs effects twice
    asked.current = true;
    void read();
  }, [read]);
  return (
    <>
      <ProblemLine say={problem} />
      {reading === null && problem === null && <p role="status">The month is being read…</p>}
      {problem !== null && (
        <button type="button" className="button" onClick={read}>
          Read it again
        </button>
      )}
      {reading && (
        <SignOff
          key={`${reading.hash} ${reading.nextEdition}`}
          {...{ month, reading, read }}
          note={{ value: note, onChange: setNote }}
        />
      )}
    </>
  );
}
