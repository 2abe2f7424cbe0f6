"use client";
import type { FormEvent } from "react";
import { Field, textOf } from "../../_parts/field.tsx";
import { Problem } from "../../_parts/problem.tsx";
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
      <Field label="E-mail" name="email" type="email" value={email} readOnly autoComplete="username" />
      <Field label="Your name" name="name" defaultValue={name} required maxLength={100} autoComplete="name" />
      <Field
        label="Choose a password"
        name="password"
        type="password"
        required
        minLength={10}
        maxLength={128}
        autoComplete="new-password"
        hint="At least 10 characters."
      />
      <Problem say={sending.problem} />
      <button type="submit" className="button button-strong" aria-disabled={sending.busy}>
        {sending.busy ? "Joining" : "Join"}
      </button>
    </form>
  );
}
