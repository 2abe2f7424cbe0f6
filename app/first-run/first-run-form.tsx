"use client";
import type { FormEvent } from "react";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "../_shell/door.module.css";

/** `asksCode`: others than this machine's people can reach the page, so the console's code is asked for. */
export function FirstRunForm({ asksCode }: { readonly asksCode: boolean }) {
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const [studio, town, name, email, password] = (["studio", "town", "name", "email", "password"] as const).map(
      (key) => textOf(form, key),
    );
    const code = asksCode ? textOf(form, "code") : "";
    const body = {
      code,
      studio,
      town,
      name,
      email,
      password,
      teaches: form.has("teaches"),
      starter: form.has("starter"),
    };
    if ((await sending.run("POST", "/api/first-run", body)) !== undefined) location.assign("/desk");
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      {asksCode ? (
        <FormField
          label="Set-up code"
          name="code"
          required
          maxLength={40}
          autoComplete="off"
          hint="Eight signs. They stand on the console where the server was started."
        />
      ) : null}
      <FormField label="Name of the studio" name="studio" required maxLength={120} autoComplete="organization" />
      <FormField label="Town" name="town" maxLength={120} autoComplete="address-level2" />
      <FormField label="Your name" name="name" required maxLength={100} autoComplete="name" />
      <FormField label="E-mail" name="email" type="email" required autoComplete="username" />
      <FormField
        label="Password"
        name="password"
        type="password"
        required
        minLength={10}
        maxLength={128}
        autoComplete="new-password"
        hint="At least 10 characters. A few words in a row are easier to keep than one strange one."
      />
      <label className="check">
        <input type="checkbox" name="teaches" />I also teach here
      </label>
      <label className="check">
        <input type="checkbox" name="starter" defaultChecked />
        Begin with a library of moves under plain names and a first room of example springs, to be changed to your own
      </label>
      <ProblemLine say={sending.problem} />
      <SendButton busy={sending.busy} doing="Setting up…">
        Make the studio
      </SendButton>
    </form>
  );
}
