"use client";
import type { FormEvent } from "react";
import { FormField, textOf } from "../../_parts/form-field.tsx";
import { ProblemLine } from "../../_parts/problem-line.tsx";
import { SendButton } from "../../_parts/send-button.tsx";
import { useSend } from "../../_parts/use-send.ts";
import styles from "../../_shell/door.module.css";

interface JoinProps {
  readonly invitationId: string;
  readonly email: string;
  readonly name: string;
}

export function JoinForm({ invitationId, email, name }: JoinProps) {
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const body = { name: textOf(form, "name"), password: textOf(form, "password") };
    const done = await sending.run("POST", `/api/join/${invitationId}`, body);
    if (done !== undefined) location.assign("/desk");
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <FormField label="Email" name="email" type="email" value={email} readOnly autoComplete="username" />
      <FormField label="Your name" name="name" defaultValue={name} required maxLength={100} autoComplete="name" />
      <FormField
        label="Choose a password"
        name="password"
        type="password"
        required
        minLength={10}
        maxLength={128}
        autoComplete="new-password"
        hint="At least 10 characters."
      />
      <ProblemLine say={sending.problem} />
      <SendButton busy={sending.busy} doing="Joining…">
        Join
      </SendButton>
    </form>
  );
}
