"use client";
import type { FormEvent } from "react";
import { Field, textOf } from "../_parts/field.tsx";
import { Problem } from "../_parts/problem.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "../_shell/door.module.css";

/** A full page load follows, so that nothing of an earlier session stays in the page's memory. */
export function SignInForm({ to }: { readonly to: string }) {
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const body = { email: textOf(form, "email").trim(), password: textOf(form, "password") };
    const done = await sending.run("POST", "/api/auth/sign-in/email", body);
    if (done !== undefined) location.assign(to);
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <Field label="E-mail" name="email" type="email" autoComplete="username" required autoFocus />
      <Field label="Password" name="password" type="password" autoComplete="current-password" required />
      <Problem say={sending.problem} />
      <button type="submit" className="button button-strong" aria-disabled={sending.busy}>
        {sending.busy ? "Signing in" : "Sign in"}
      </button>
      <p className="quiet small">
        Password forgotten? Ask a manager of your studio for a reset link. The only manager asks whoever runs the server
        for one: <code>npm run -s reset-password</code>. No account yet? A manager invites you.
      </p>
    </form>
  );
}
