"use client";
/** Makes the studio and its manager, and goes on to the desk. */
import type { ComponentProps, FormEvent } from "react";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "../_shell/door.module.css";

const FIELDS: readonly (ComponentProps<typeof FormField> & { readonly name: string })[] = [
  { label: "Name of the studio", name: "studio", required: true, maxLength: 120, autoComplete: "organization" },
  { label: "Town", name: "town", maxLength: 120, autoComplete: "address-level2" },
  { label: "Your name", name: "name", required: true, maxLength: 100, autoComplete: "name" },
  { label: "Email", name: "email", type: "email", required: true, autoComplete: "username" },
  {
    label: "Password",
    name: "password",
    type: "password",
    required: true,
    minLength: 10,
    maxLength: 128,
    autoComplete: "new-password",
    hint: "At least 10 characters. A few words in a row are easier to remember.",
  },
];

/** `asksCode`: the page can be reached from other machines, so it asks for the code shown in the console. */
export function FirstRunForm({ asksCode }: { readonly asksCode: boolean }) {
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const typed = Object.fromEntries(FIELDS.map(({ name }) => [name, textOf(form, name)]));
    const choices = { teaches: form.has("teaches"), starter: form.has("starter") };
    const body = { code: asksCode ? textOf(form, "code") : "", ...typed, ...choices };
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
          hint="Eight characters, shown in the console where the server was started."
        />
      ) : null}
      {FIELDS.map((field) => (
        <FormField key={field.name} {...field} />
      ))}
      <label className="check">
        <input type="checkbox" name="teaches" />I also teach here
      </label>
      <label className="check">
        <input type="checkbox" name="starter" defaultChecked />
        Start with a library of common moves and a room with example springs, which you can change
      </label>
      <ProblemLine say={sending.problem} />
      <SendButton busy={sending.busy} doing="Setting up…">
        Set up the studio
      </SendButton>
    </form>
  );
}
