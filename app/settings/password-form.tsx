"use client";
/** Changes the password. That ends every other session of the person, and the form says so before and after. */
import { type FormEvent, useState } from "react";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./settings.module.css";

export function PasswordForm() {
  const sending = useSend();
  const [done, setDone] = useState(false);
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const element = event.currentTarget;
    const form = new FormData(element);
    setDone(false);
    const body = { currentPassword: textOf(form, "current"), newPassword: textOf(form, "next") };
    if ((await sending.run("POST", "/api/auth/change-password", body)) === undefined) return;
    element.reset();
    setDone(true);
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <p>Changing your password signs you out on every other device and in every other browser, at once.</p>
      <FormField label="Current password" name="current" type="password" autoComplete="current-password" required />
      <FormField
        label="New password"
        name="next"
        type="password"
        autoComplete="new-password"
        minLength={10}
        maxLength={128}
        required
        hint="At least 10 characters."
      />
      <ProblemLine say={sending.problem} />
      <SendButton busy={sending.busy} doing="Changing it…">
        Change my password
      </SendButton>
      <p role="status">
        {done
          ? "Your password is changed, and you are signed out everywhere else. Other tabs of this browser ask you to sign in again; what you typed in them is kept."
          : ""}
      </p>
    </form>
  );
}
