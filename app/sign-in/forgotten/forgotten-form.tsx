"use client";
import Link from "next/link";
import { type FormEvent, useState } from "react";
import { FormField, textOf } from "../../_parts/form-field.tsx";
import { ProblemLine } from "../../_parts/problem-line.tsx";
import { SendButton } from "../../_parts/send-button.tsx";
import { useSend } from "../../_parts/use-send.ts";
import styles from "../../_shell/door.module.css";

export function ForgottenForm() {
  const sending = useSend();
  const [askedFor, setAskedFor] = useState<string | null>(null);
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const email = textOf(new FormData(event.currentTarget), "email").trim();
    if ((await sending.run("POST", "/api/reset", { email })) !== undefined) setAskedFor(email);
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <FormField label="Email" name="email" type="email" autoComplete="username" required autoFocus />
      <ProblemLine say={sending.problem} />
      <p role="status">
        {askedFor !== null &&
          `If somebody here has the address ${askedFor}, a mail with a link is on its way. The link works once, for an hour. Look among unwanted mail too.`}
      </p>
      <SendButton busy={sending.busy} doing="Asking…">
        Send me a link
      </SendButton>
      <Link className="link-line" href="/sign-in">
        Back to signing in
      </Link>
    </form>
  );
}
