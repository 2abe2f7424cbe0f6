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
  /** What this page shows, for the server to compare with. */
  const [seen, setSeen] = useState({ name, town });
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    setSaid("");
    const body = { name: textOf(form, "name"), town: textOf(form, "town"), seen };
    const sent = await sending.run<{ name: string; town: string }>("PUT", "/api/studio/name", body);
    if (sent === undefined) return;
    setSeen({ name: sent.name, town: sent.town });
    setSaid("Saved. What is signed keeps the old name.");
    router.refresh();
  };
  return (
    <>
      <h2>Name and town</h2>
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
