"use client";
/** Signing out: what this device keeps is cleared when the server has all of it; else the person decides. */
import { useState } from "react";
import { loadLater } from "#lib/client/late.ts";
import { agree } from "#lib/plan/format.ts";
import { dropAllRehearsals } from "../_rehearsal/rehearsal-keys.ts";
import { dropAllDrafts } from "../library/_form/kept-draft.ts";
import { useLateParts } from "./late-part.tsx";
import { Problem } from "./problem.tsx";
import { send } from "./send.ts";

/** Reads shared documents and talks to the server about them: more script than all else on most pages. */
const lateCopies = loadLater(() => import("./kept-copies.ts"));
const LATE_PARTS = [lateCopies];
const NOT_HERE =
  "A part of the program could not be fetched, so nothing was cleared and you are still signed in. Try again when the network is back.";

type Step =
  | { kind: "ready" }
  | { kind: "looking" }
  | { kind: "unsaved"; count: number }
  | { kind: "problem"; say: string };

export function SignOut({ userId }: { readonly userId: string }) {
  const [step, setStep] = useState<Step>({ kind: "ready" });
  useLateParts(LATE_PARTS);

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
    const kept = await lateCopies.fetch().catch(() => null);
    if (!kept) return setStep({ kind: "problem", say: NOT_HERE });
    const copies = await kept.keptCopies(userId);
    const saved = await Promise.all(copies.map(kept.isSaved));
    await kept.clearCopies(copies.filter((_, i) => saved[i]));
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
