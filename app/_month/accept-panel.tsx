"use client";
import { type FormEvent, useRef, useState } from "react";
import { FormField, textOf } from "#app/_parts/form-field.tsx";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { send } from "#app/_parts/send.ts";
import { SendButton } from "#app/_parts/send-button.tsx";
import { useSend } from "#app/_parts/use-send.ts";
/** A lead accepts what was found as it stands, with a reason; what was accepted is listed apart. */
import { timesIn } from "#lib/formats/canonical-times.ts";
import type { MonthFinding } from "#lib/month/types.ts";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";

/** The chosen finding, or several that are one thing to mend, as they are when the panel opens. */
export function AcceptPanel({ desk, ids }: { readonly desk: MonthDesk; readonly ids: readonly string[] }) {
  const [asked] = useState(() => desk.open.findings.filter(({ id }) => ids.includes(id)));
  const done = useRef(new Set<string>());
  const sending = useSend();
  const { choose, props, session } = desk;
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const reason = textOf(new FormData(event.currentTarget), "reason");
    const sent = await sending.runWith(() => acceptAll(props.month, asked, reason, done.current));
    if (!sent?.ok) return;
    session.say("Accepted. It stands again when its values change.");
    choose({ panel: { kind: "accepted" }, finding: null });
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <ul className={styles.findings}>
        {asked.map(({ id, message }) => (
          <li key={id} className="notice">
            {message}
          </li>
        ))}
      </ul>
      <FormField label="Why it may stay as it is" name="reason" required hint="Three words at least." />
      <p className="quiet small">It leaves the count, and stands again as soon as one of its values changes.</p>
      <ProblemLine say={sending.problem} />
      <div className={styles.acts}>
        <SendButton busy={sending.busy} doing="Accepting…">
          Accept
        </SendButton>
        <button type="button" className="button" onClick={() => choose({ panel: null })}>
          Leave it open
        </button>
      </div>
    </form>
  );
}

/** One after the other; the first refusal ends it. What was accepted before it stays accepted, and is `done` when it is sent again. */
async function acceptAll(month: string, findings: readonly MonthFinding[], reason: string, done: Set<string>) {
  for (const { level: _, ...finding } of findings) {
    if (done.has(finding.id)) continue;
    const sent = await send("POST", `/api/programme/${month}/acceptances`, { finding, reason });
    if (!sent.ok) return sent;
    done.add(finding.id);
  }
  return { ok: true, value: undefined } as const;
}

/** What is accepted, with who said why; a lead can end it. */
export function AcceptedPanel({ desk }: { readonly desk: MonthDesk }) {
  const sending = useSend();
  const { accepted, props } = desk;
  if (accepted.length === 0) return <p className="quiet">No finding is accepted as it stands.</p>;
  const end = (id: string) => void sending.run("POST", `/api/programme/${props.month}/acceptances/${id}/end`);
  return (
    <>
      <ProblemLine say={sending.problem} />
      <ul className={styles.rows}>
        {accepted.map(({ finding, by }) => (
          <li key={by.id}>
            <p>{timesIn(finding.message, desk.formats)}</p>
            <p className="quiet">
              {by.byName}: “{by.reason}”
            </p>
            {props.may.sign && (
              <button type="button" className="act" onClick={() => end(by.id)}>
                Accept it no longer<span className="visually-hidden">: {timesIn(finding.message, desk.formats)}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
