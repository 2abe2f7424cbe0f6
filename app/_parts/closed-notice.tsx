"use client";
/**
 * What to do when the server has closed this page's connection for good. Somebody whose session ended while they wrote
 * signs in again right here: everything typed stays in the page and on this device, and is sent once connected.
 */
import Link from "next/link";
import type { FormEvent } from "react";
import { CLOSE } from "#lib/protocol/close.ts";
import styles from "./closed-notice.module.css";
import { FormField, textOf } from "./form-field.tsx";
import { ProblemLine } from "./problem-line.tsx";
import { SendButton } from "./send-button.tsx";
import { useSend } from "./use-send.ts";

/** What it needs of a session, of whatever kind of document. */
interface Closed {
  readonly me: { readonly name: string };
  undo(): void;
  reconnect(): void;
  startAfresh(): Promise<void>;
}

interface ClosedNoticeProps {
  readonly session: Closed;
  readonly code: number;
  readonly sentence: string;
}

export function ClosedNotice({ session, code, sentence }: ClosedNoticeProps) {
  return (
    <section className={styles.closed} aria-label="The connection has ended" role="alert">
      <p>{sentence}</p>
      <Remedy session={session} code={code} />
    </section>
  );
}

function Remedy({ session, code }: { session: Closed; code: number }) {
  switch (code) {
    case CLOSE.notSignedIn.code:
    case CLOSE.otherPerson.code:
      return <SignInAgain session={session} />;
    case CLOSE.tooLarge.code:
    case CLOSE.tooHeavy.code:
    case CLOSE.full.code:
      return (
        <div className="acts">
          <button type="button" className="button button-strong" onClick={() => session.undo()}>
            Undo your last act
          </button>
          <button type="button" className="button" onClick={() => session.reconnect()}>
            Try again
          </button>
        </div>
      );
    case CLOSE.erasing.code:
      return (
        <button type="button" className="button button-strong" onClick={() => void session.startAfresh()}>
          Load it again
        </button>
      );
    case CLOSE.noRight.code:
    case CLOSE.unknownDocument.code:
    case CLOSE.newerDocument.code:
      return (
        <Link className="button" href="/desk">
          Back to your desk
        </Link>
      );
    default:
      return (
        <button type="button" className="button button-strong" onClick={() => location.reload()}>
          Reload the page
        </button>
      );
  }
}

function SignInAgain({ session }: { session: Closed }) {
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const body = { email: textOf(form, "email").trim(), password: textOf(form, "password") };
    if ((await sending.run("POST", "/api/auth/sign-in/email", body)) !== undefined) session.reconnect();
  };
  return (
    <form className={styles.signIn} onSubmit={submit} method="post">
      <FormField label={`Email of ${session.me.name}`} name="email" type="email" autoComplete="username" required />
      <FormField label="Password" name="password" type="password" autoComplete="current-password" required />
      <SendButton busy={sending.busy} doing="Signing in…">
        Sign in and continue
      </SendButton>
      <ProblemLine say={sending.problem} />
    </form>
  );
}
