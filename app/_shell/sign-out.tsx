"use client";
/** Signing out: what this device keeps is cleared when the server has all of it; else the person decides. */
import { useState } from "react";
import { agree } from "#lib/plan/format.ts";
import { dropAllRehearsals } from "../_rehearsal/rehearsal-keys.ts";
import { dropAllDrafts } from "../library/_form/kept-draft.ts";
import { clearCopies, isSaved, keptCopies } from "./kept-copies.ts";
import { Problem } from "./problem.tsx";
import { send } from "./send.ts";

type Step =
  | { kind: "ready" }
  | { kind: "looking" }
  | { kind: "unsaved"; count: number }
  | { kind: "problem"; say: string };

export function SignOut({ userId }: { readonly userId: string }) {
  const [step, setStep] = useState<Step>({ kind: "ready" });

  const leave = async () => {
    const sent = await send("POST", "/api/auth/sign-out", {});
    if (sent.ok || sent.status === 401) {
      dropAllDrafts();
      dropAllRehearsals();
      location.assign("/sign-in");
    } else setStep({ kind: "problem", say: sent.message });
  };
  const look = async () => {
    setStep({ kind: "looking" });
    const copies = await keptCopies(userId);
    const saved = await Promise.all(copies.map(isSaved));
    await clearCopies(copies.filter((_, i) => saved[i]));
    const count = saved.filter((yes) => !yes).length;
    if (count > 0) setStep({ kind: "unsaved", count });
    else await leave();
  };

  if (step.kind === "unsaved") {
    const what = agree(step.count, "One plan or month has", `${step.count} plans or months have`);
    return (
      <div role="alert">
        <p className="notice">
          {what} changes that the server does not have yet. They stay on this device and go out when you sign in here
          again. Anybody who uses this device could find them.
        </p>
        <p style={{ display: "flex", flexWrap: "wrap", gap: "var(--space-2)", marginTop: "var(--space-3)" }}>
          <button type="button" className="button" onClick={() => setStep({ kind: "ready" })}>
            Stay signed in
          </button>
          <button type="button" className="button button-must" onClick={leave}>
            Sign out, keep them here
          </button>
        </p>
      </div>
    );
  }
  return (
    <div>
      <button type="button" className="button" onClick={look} disabled={step.kind === "looking"}>
        {step.kind === "looking" ? "Making sure all is saved" : "Sign out"}
      </button>
      <Problem say={step.kind === "problem" ? step.say : null} />
    </div>
  );
}
