"use client";
/** Changes the password. That ends every other session of the person, and the form says so before and after. */
import { type FormEvent, useState } from "react";
import { Dialog } from "../_parts/dialog.tsx";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./new-password.module.css";

export function NewPassword() {
  const [open, setOpen] = useState(false);
  return (
    <div>
      <button type="button" className="button" onClick={() => setOpen(true)}>
        Change password
      </button>
      {open ? <NewPasswordDialog onClose={() => setOpen(false)} /> : null}
    </div>
  );
}

function NewPasswordDialog({ onClose }: { readonly onClose: () => void }) {
  const [done, setDone] = useState(false);
  return (
    <Dialog title="Change password" onClose={onClose}>
      {done ? (
        <p role="status">
          Your password is changed, and you are signed out everywhere else. Other tabs of this browser ask you to sign
          in again; what you typed in them is kept.
        </p>
      ) : (
        <PasswordForm onDone={() => setDone(true)} />
      )}
    </Dialog>
  );
}

function PasswordForm({ onDone }: { readonly onDone: () => void }) {
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const body = { currentPassword: textOf(form, "current"), newPassword: textOf(form, "next") };
    if ((await sending.run("POST", "/api/auth/change-password", body)) !== undefined) onDone();
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <p>Changing your password signs you out on every other device and in every other browser, at once.</p>
      <FormField
        label="Current password"
        name="current"
        type="password"
        autoComplete="current-password"
        required
        data-first
      />
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
    </form>
  );
}
