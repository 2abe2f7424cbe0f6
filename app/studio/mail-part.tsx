"use client";
/** E-mail: the studio's mail server, a test mail, and what waits or could not be sent. */
import { useRouter } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import type { MailSettingsView } from "#server/mail/mail-settings.ts";
import type { MailState } from "#server/mail/manage-mail.ts";
import { LocalTime } from "../_parts/local-time.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import { MailForm } from "./mail-form.tsx";
import { MailQueue } from "./mail-queue.tsx";
import { MAIL, serverWords, testSentWords } from "./mail-words.ts";
import styles from "./studio.module.css";

interface MailPartProps {
  /** Null while e-mail is not set up. */
  readonly settings: MailSettingsView | null;
  readonly state: MailState;
  /** The address that the server is started for. */
  readonly address: string;
}

export function MailPart({ settings, state, address }: MailPartProps) {
  const router = useRouter();
  const [editing, setEditing] = useState(false);
  const done = () => {
    setEditing(false);
    router.refresh();
  };
  return (
    <>
      <div className="spread">
        <h2>E-mail</h2>
        <button type="button" className="button" onClick={() => setEditing(true)}>
          {settings ? "Change the mail server" : "Set up e-mail"}
        </button>
      </div>
      <p className="quiet">{MAIL.intro}</p>
      {settings ? <InUse settings={settings} lastSentAt={state.lastSentAt} /> : <p>{MAIL.notSet}</p>}
      <MailQueue unsent={state.unsent} />
      {editing ? (
        <MailForm settings={settings} address={address} onClose={() => setEditing(false)} onDone={done} />
      ) : null}
    </>
  );
}

function InUse({ settings, lastSentAt }: { settings: MailSettingsView; lastSentAt: number | null }) {
  const sending = useSend();
  const [said, setSaid] = useState<string | null>(null);
  const test = async () => {
    setSaid(null);
    const sent = await sending.run<{ to: string; said: string }>("POST", "/api/mail/test");
    if (sent) setSaid(testSentWords(sent));
  };
  return (
    <>
      <p className={styles.mailServer}>
        {serverWords(settings)}, from {settings.from}.{" "}
        {lastSentAt === null ? (
          "No notice has been mailed yet."
        ) : (
          <>
            The last mail went <LocalTime at={lastSentAt} />.
          </>
        )}
      </p>
      <div className="acts">
        <button type="button" className="button" aria-disabled={sending.busy} onClick={test}>
          {sending.busy ? "Sending…" : "Send me a test mail"}
        </button>
        <TurnOff />
      </div>
      <div role="status">{said ? <p className="done">{said}</p> : null}</div>
      <ProblemLine say={sending.problem} />
    </>
  );
}

function TurnOff() {
  const router = useRouter();
  const sending = useSend();
  const [asked, setAsked] = useState(false);
  const keep = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (asked) keep.current?.focus();
  }, [asked]);
  const turnOff = async () => {
    if ((await sending.run("DELETE", "/api/mail")) !== undefined) router.refresh();
  };
  if (!asked) {
    return (
      <button type="button" className="act" onClick={() => setAsked(true)}>
        {MAIL.turnOff}
      </button>
    );
  }
  return (
    <>
      <span role="status">{MAIL.turnOffAsk}</span>
      <button type="button" className="act" aria-disabled={sending.busy} onClick={turnOff}>
        {MAIL.turnOff}
      </button>
      <button type="button" className="act" ref={keep} onClick={() => setAsked(false)}>
        Keep it
      </button>
      <ProblemLine say={sending.problem} />
    </>
  );
}
