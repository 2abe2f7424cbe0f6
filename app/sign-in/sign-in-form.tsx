"use client";
import Link from "next/link";
import type { FormEvent } from "react";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "../_shell/door.module.css";

/** A full page load follows, so that nothing of an earlier session stays in the page's memory. */
interface SignInFormProps {
  readonly to: string;
  /** The studio sends e-mail. */
  readonly byMail: boolean;
}

export function SignInForm({ to, byMail }: SignInFormProps) {
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const body = { email: textOf(form, "email").trim(), password: textOf(form, "password") };
    const done = await sending.run("POST", "/api/auth/sign-in/email", body);
    // The part after `#` never reaches the server: the browser kept it on its way here.
    if (done !== undefined) location.assign(`${to}${location.hash}`);
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <FormField label="Email" name="email" type="email" autoComplete="username" required autoFocus />
      <FormField label="Password" name="password" type="password" autoComplete="current-password" required />
      <ProblemLine say={sending.problem} />
      <SendButton busy={sending.busy} doing="Signing in…">
        Sign in
      </SendButton>
      {byMail && (
        <p>
          <Link className="link-line" href="/sign-in/forgotten">
            Forgot your password?
          </Link>
        </p>
      )}
      <p className="quiet small">
        {byMail
          ? "No mail? Ask a manager of your studio for a reset link."
          : "Forgot your password? Ask a manager of your studio for a reset link."}{" "}
        If you are the only manager, ask the person who runs the server: <code>npm run -s reset-password</code>. No
        account yet? Ask a manager to invite you.
      </p>
    </form>
  );
}
