"use client";
/** Signing out clears this device's copies once the server has everything in them; if it has not, the person decides. */
import { useState } from "react";
import { loadLater } from "#lib/client/late.ts";
import { agree } from "#lib/plan/format.ts";
import { dropAllDrafts } from "../_parts/kept/kept-draft.ts";
import { dropAllProposalCopies } from "../_parts/kept/proposal-copies.ts";
import { dropAllRehearsals } from "../_parts/kept/rehearsal-keys.ts";
import { dropAllTypedWords } from "../_parts/kept/typed-words-key.ts";
import { useLateParts } from "../_parts/late-part.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { send } from "../_parts/send.ts";
import styles from "./account-menu.module.css";

/** Reads shared documents and sends them to the server: more script than everything else on most pages. */
const lateCopies = loadLater(() => import("./kept-copies.ts"));
const LATE_PARTS = [lateCopies];
const NOT_HERE =
  "Part of this page could not be loaded. Nothing was cleared and you are still signed in: try again when the network is back.";

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
      dropAllProposalCopies();
      dropAllTypedWords();
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

  if (step.kind === "unsaved")
    return <UnsavedCopies count={step.count} onStay={() => setStep({ kind: "ready" })} onLeave={leave} />;
  return (
    <div>
      <button type="button" className="button" onClick={look} disabled={step.kind === "looking"}>
        {step.kind === "looking" ? "Checking that everything is saved…" : "Sign out"}
      </button>
      <ProblemLine say={step.kind === "problem" ? step.say : null} />
    </div>
  );
}

interface UnsavedProps {
  readonly count: number;
  readonly onStay: () => void;
  readonly onLeave: () => void;
}

function UnsavedCopies({ count, onStay, onLeave }: UnsavedProps) {
  const what = agree(count, "One plan or month has", `${count} plans or months have`);
  return (
    <div role="alert">
      <p className="notice">
        {what} changes that are not on the server yet. They stay on this device and are sent when you sign in here
        again. Anybody who uses this device could find them.
      </p>
      <p className={styles.acts}>
        <button type="button" className="button" onClick={onStay}>
          Stay signed in
        </button>
        <button type="button" className="button button-must" onClick={onLeave}>
          Sign out, keep them here
        </button>
      </p>
    </div>
  );
}
