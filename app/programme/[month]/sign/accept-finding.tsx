"use client";
/** The findings to look at again, each to be accepted with a reason, and those that were. */
import { type FormEvent, useState } from "react";
import { FormField, textOf } from "#app/_parts/form-field.tsx";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { SendButton } from "#app/_parts/send-button.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import type { MonthFinding } from "#lib/month/types.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
import styles from "./sign.module.css";

interface ListProps {
  readonly month: string;
  /** Reads the month again. */
  done(): Promise<void>;
}

export function LookAgainList({ month, findings, done }: ListProps & { readonly findings: readonly MonthFinding[] }) {
  if (findings.length === 0) return null;
  return (
    <>
      {ofOneRule(findings).map((several) => (
        <div key={several[0]?.rule} className={styles.rows}>
          <p>
            {several.length} findings are of one rule: {several[0]?.message}
          </p>
          <AcceptForm month={month} findings={several} done={done} />
        </div>
      ))}
      <ul className={styles.rows}>
        {findings.map((finding) => (
          <li key={finding.id}>
            <p>
              <strong>Look again.</strong> {finding.message}
            </p>
            <AcceptForm month={month} findings={[finding]} done={done} />
          </li>
        ))}
      </ul>
    </>
  );
}

/** Fewer are accepted one by one. */
const SEVERAL = 3;

/** Rules that found the same in several places. */
function ofOneRule(findings: readonly MonthFinding[]): MonthFinding[][] {
  const byRule = new Map<string, MonthFinding[]>();
  for (const finding of findings) byRule.set(finding.rule, [...(byRule.get(finding.rule) ?? []), finding]);
  return [...byRule.values()].filter((several) => several.length >= SEVERAL);
}

function AcceptForm({ month, findings, done }: ListProps & { readonly findings: readonly MonthFinding[] }) {
  const [open, setOpen] = useState(false);
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const reason = textOf(new FormData(event.currentTarget), "reason");
    for (const { level: _, ...finding } of findings)
      if ((await sending.run("POST", `/api/programme/${month}/acceptances`, { finding, reason })) === undefined) return;
    await done();
  };
  const [first] = findings;
  const words = findings.length === 1 ? "Accept it as it is" : `Accept all ${findings.length} as they are`;
  if (!open)
    return (
      <button
        type="button"
        className="text-button"
        aria-label={findings.length === 1 ? `Accept: ${first?.message}` : words}
        onClick={() => setOpen(true)}
      >
        {words}
      </button>
    );
  return (
    <form onSubmit={submit}>
      <FormField label="Why it may stay as it is" name="reason" required autoFocus hint="Three words at least." />
      <ProblemLine say={sending.problem} />
      <div className="acts">
        <SendButton busy={sending.busy} doing="Accepting…">
          Accept
        </SendButton>
        <button type="button" className="button" onClick={() => setOpen(false)}>
          Leave it open
        </button>
      </div>
    </form>
  );
}

export function AcceptedInMonth({
  month,
  accepted,
  done,
}: ListProps & { readonly accepted: readonly AcceptanceView[] }) {
  const sending = useSend();
  if (accepted.length === 0) return null;
  const end = async (id: string) => {
    const sent = await sending.run("POST", `/api/programme/${month}/acceptances/${id}/end`);
    if (sent !== undefined) await done();
  };
  return (
    <>
      <h3>Accepted</h3>
      <ProblemLine say={sending.problem} />
      <ul className={styles.rows}>
        {accepted.map(({ id, message, reason, byName }) => (
          <li key={id}>
            <p>
              {message} <span className="quiet">{`${byName}: “${reason}”`}</span>
            </p>
            <button type="button" className="text-button" aria-label={`End: ${message}`} onClick={() => end(id)}>
              Accept it no longer
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
