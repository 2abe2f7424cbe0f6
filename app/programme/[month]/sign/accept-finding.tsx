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
    <ul className={styles.rows}>
      {findings.map((finding) => (
        <li key={finding.id}>
          <p>
            <strong>Look again.</strong> {finding.message}
          </p>
          <AcceptForm month={month} finding={finding} done={done} />
        </li>
      ))}
    </ul>
  );
}

function AcceptForm({ month, finding, done }: ListProps & { readonly finding: MonthFinding }) {
  const [open, setOpen] = useState(false);
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const reason = textOf(new FormData(event.currentTarget), "reason");
    const { level: _, ...seen } = finding;
    const sent = await sending.run("POST", `/api/programme/${month}/acceptances`, { finding: seen, reason });
    if (sent !== undefined) await done();
  };
  if (!open)
    return (
      <button
        type="button"
        className="text-button"
        aria-label={`Accept: ${finding.message}`}
        onClick={() => setOpen(true)}
      >
        Accept it as it is
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
