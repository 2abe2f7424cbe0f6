"use client";
/** The studio's one policy about sign-off. */
import { useState } from "react";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";

export function SignOffPolicy({ soleAuthorMaySign }: { readonly soleAuthorMaySign: boolean }) {
  const sending = useSend();
  const [on, setOn] = useState(soleAuthorMaySign);
  const change = async (next: boolean) => {
    setOn(next);
    const kept = await sending.run("PATCH", "/api/studio", { soleAuthorMaySign: next });
    if (kept === undefined) setOn(!next);
  };
  return (
    <>
      <h2>Sign-off</h2>
      <label className="check">
        <input
          type="checkbox"
          checked={on}
          aria-disabled={sending.busy}
          onChange={(event) => change(event.target.checked)}
        />
        A lead may sign off a plan that only they wrote
      </label>
      <p className="quiet small">
        For a one-person studio. It switches itself off when somebody joins who writes plans.
      </p>
      <ProblemLine say={sending.problem} />
    </>
  );
}
