"use client";
import type { FormEvent } from "react";
import { FormField, textOf } from "../../_parts/form-field.tsx";
import { ProblemLine } from "../../_parts/problem-line.tsx";
import { SendButton } from "../../_parts/send-button.tsx";
import { useSend } from "../../_parts/use-send.ts";
import styles from "../../_shell/door.module.css";

/** A full page load follows, so that nothing of an earlier session stays in the page's memory. */
export function ResetForm({ token, email }: { readonly token: string; readonly email: string }) {
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const password = textOf(new FormData(event.currentTarget), "password");
    const done = await sending.run("POST", `/api/reset/${token}`, { password });
    if (done !== undefined) location.assign("/desk");
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <FormField label="Email" name="email" type="email" value={email} readOnly autoComplete="username" />
      <FormField
        label="New password"
        name="password"
        type="password"
        required
        minLength={10}
        maxLength={128}
        autoComplete="new-password"
        hint="At least 10 characters. Saving it signs you out everywhere else."
      />
      <ProblemLine say={sending.problem} />
      <SendButton busy={sending.busy} doing="Saving…">
        Save this password
      </SendButton>
    </form>
  );
}
