"use client";
/** First steps as a list: what each is for, how far it is, and one act that leads to the very place. */
import Link from "next/link";
import { useRouter } from "next/navigation";
import type { ReactNode } from "react";
import * as z from "zod/mini";
import type { FirstStep, StepAct } from "#lib/desk/first-steps.ts";
import styles from "./first-steps.module.css";
import { ProblemLine } from "./problem-line.tsx";
import { useSend } from "./use-send.ts";

interface StepsProps {
  readonly steps: readonly FirstStep[];
  /** For managers: whether the list lies on the desk, or under Studio alone. */
  readonly away?: boolean;
}

export function FirstStepsList({ steps, away }: StepsProps) {
  const router = useRouter();
  const sending = useSend();
  const done = steps.filter(({ state }) => state === "done").length;
  const all = done === steps.length;
  const put = async () => {
    const kept = await sending.run("PUT", "/api/studio/first-steps", { away: !away });
    if (kept !== undefined) router.refresh();
  };
  return (
    <>
      <div className="spread">
        <h2>First steps</h2>
        <span className="quiet">
          {done} of {steps.length} done
        </span>
      </div>
      <ol className={styles.steps}>
        {steps.map((step) => (
          <Step key={step.id} step={step} />
        ))}
      </ol>
      {away === undefined || all ? null : (
        <div className={styles.away}>
          <button type="button" className="act" onClick={put} aria-disabled={sending.busy}>
            {away ? "Show them on the desk" : "Put away"}
          </button>
          <span className="quiet small">
            {away ? "They are put away from the desk." : "They stay under Studio, First steps."}
          </span>
          <ProblemLine say={sending.problem} />
        </div>
      )}
    </>
  );
}

const STATE_SIGNS = { done: "Done", begun: "Begun", open: "To do" } as const;

function Step({ step: { title, why, state, far, act } }: { readonly step: FirstStep }) {
  return (
    <li className={styles.step} data-state={state}>
      <span className={styles.state}>{STATE_SIGNS[state]}</span>
      <span className={styles.words}>
        <strong>{title}</strong>
        <span className="quiet small">{why}</span>
      </span>
      <span className={styles.far}>{far}</span>
      {act ? <Act act={act} about={title} strong={state !== "done"} /> : null}
    </li>
  );
}

interface ActProps {
  readonly act: StepAct;
  readonly about: string;
  readonly strong: boolean;
}

function Act({ act, about, strong }: ActProps) {
  const look = strong ? "button" : "act";
  const words = (
    <>
      {act.label}
      <span className="visually-hidden">: {about}</span>
    </>
  );
  if (act.kind === "example") return <MakeExample look={look}>{words}</MakeExample>;
  return act.href === "/floor" ? (
    <a className={look} href={act.href}>
      {words}
    </a>
  ) : (
    <Link className={look} href={act.href}>
      {words}
    </Link>
  );
}

const exampleSchema = z.object({ id: z.string() });

function MakeExample({ look, children }: { readonly look: string; readonly children: ReactNode }) {
  const router = useRouter();
  const sending = useSend();
  const make = async () => {
    const made = await sending.run("POST", "/api/plans/example", undefined, { reads: exampleSchema });
    if (made) router.push(`/plans/${made.id}`);
  };
  return (
    <span>
      <button type="button" className={look} onClick={make} aria-disabled={sending.busy}>
        {children}
      </button>
      <ProblemLine say={sending.problem} />
    </span>
  );
}
