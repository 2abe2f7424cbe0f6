"use client";
/** The studio's name and town, as pages, invitations and signed sheets say them. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./studio.module.css";

export function NamePart({ name, town }: { readonly name: string; readonly town: string }) {
  const router = useRouter();
  const sending = useSend();
  const [said, setSaid] = useState("");
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    setSaid("");
    const body = { name: textOf(form, "name"), town: textOf(form, "town") };
    if ((await sending.run("PUT", "/api/studio/name", body)) === undefined) return;
    setSaid("Saved. What is signed keeps the old name.");
    router.refresh();
  };
  return (
    <>
      <h2>Name and town</h2>
      <p className="quiet">
        The time zone and the day on which a week begins are under <a href="#month">Months</a>.
      </p>
      <form className={styles.inline} onSubmit={submit}>
        <FormField label="Name of the studio" name="name" required maxLength={120} defaultValue={name} />
        <FormField label="Town" name="town" maxLength={120} defaultValue={town} />
        <button type="submit" className="button" aria-disabled={sending.busy}>
          Save
        </button>
      </form>
      <ProblemLine say={sending.problem} />
      <p role="status">{said}</p>
    </>
  );
}
