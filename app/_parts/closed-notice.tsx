"use client";
/**
 * What to do when the server has closed this page for good. A session that ended in mid-edit is signed in again right
 * here: everything typed stays, in the page and on this device, and goes into the plan once connected again.
 */
import Link from "next/link";
import { type FormEvent, useId, useState } from "react";
import { send } from "#app/_parts/post.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import styles from "./dialogs.module.css";

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
            Take back the last act
          </button>
          <button type="button" className="button" onClick={() => session.reconnect()}>
            Try again
          </button>
        </div>
      );
    case CLOSE.erasing.code:
      return (
        <button type="button" className="button button-strong" onClick={() => void session.startAfresh()}>
          Load the document again
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
  const id = useId();
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);

  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    setBusy(true);
    const sent = await send("/api/auth/sign-in/email", { email: form.get("email"), password: form.get("password") });
    setBusy(false);
    if (!sent.ok) {
      setProblem(sent.status === 401 ? "Email and password do not go together. Try again." : sent.message);
      return;
    }
    session.reconnect();
  };
  return (
    <form className={styles.signIn} onSubmit={submit} method="post">
      <div className="field">
        <label htmlFor={`${id}-email`}>Email of {session.me.name}</label>
        <input id={`${id}-email`} name="email" type="email" autoComplete="username" required />
      </div>
      <div className="field">
        <label htmlFor={`${id}-password`}>Password</label>
        <input
          id={`${id}-password`}
          name="password"
          type="password"
          autoComplete="current-password"
          required
          aria-describedby={problem ? `${id}-problem` : undefined}
        />
      </div>
      <button type="submit" className="button button-strong" aria-disabled={busy}>
        {busy ? "Signing in…" : "Sign in and go on"}
      </button>
      {problem && (
        <p id={`${id}-problem`} className="problem" role="alert">
          {problem}
        </p>
      )}
    </form>
  );
}
