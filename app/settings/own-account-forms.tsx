"use client";
/** The person's own name, and the address with which they sign in. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./settings.module.css";

export function NameForm({ name }: { readonly name: string }) {
  const { busy, problem, said, submit } = useOwnForm("/api/me/name", (form) => ({ name: textOf(form, "name") }));
  return (
    <form className={styles.form} onSubmit={submit("Your name is changed. Signed sheets keep the old one.")}>
      <FormField label="Your name" name="name" required maxLength={100} autoComplete="name" defaultValue={name} />
      <ProblemLine say={problem} />
      <SendButton busy={busy} doing="Saving…">
        Save the name
      </SendButton>
      <p role="status">{said}</p>
    </form>
  );
}

export function EmailForm({ email }: { readonly email: string }) {
  const { busy, problem, said, submit } = useOwnForm("/api/me/email", (form) => ({
    email: textOf(form, "email"),
    password: textOf(form, "password"),
  }));
  return (
    <form className={styles.form} onSubmit={submit("Your address is changed. Sign in with it from now on.")}>
      <FormField label="Email" name="email" type="email" required autoComplete="username" defaultValue={email} />
      <FormField
        label="Your password"
        name="password"
        type="password"
        required
        autoComplete="current-password"
        hint="Asked because whoever has the address can have the account."
      />
      <ProblemLine say={problem} />
      <SendButton busy={busy} doing="Saving…">
        Save the address
      </SendButton>
      <p role="status">{said}</p>
    </form>
  );
}

function useOwnForm(url: string, bodyOf: (form: FormData) => Record<string, string>) {
  const router = useRouter();
  const sending = useSend();
  const [said, setSaid] = useState("");
  const submit = (done: string) => async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const element = event.currentTarget;
    setSaid("");
    if ((await sending.run("PUT", url, bodyOf(new FormData(element)))) === undefined) return;
    for (const field of element.querySelectorAll<HTMLInputElement>("input[type=password]")) field.value = "";
    setSaid(done);
    router.refresh();
  };
  return { busy: sending.busy, problem: sending.problem, said, submit };
}
