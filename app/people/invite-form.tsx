"use client";
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import type { InvitationView } from "#server/people/invite.ts";
import { Field, textOf } from "../_parts/field.tsx";
import { Problem } from "../_parts/problem.tsx";
import { useSend } from "../_parts/use-send.ts";
import { CopyLink } from "./copy-link.tsx";
import styles from "./people.module.css";
import { RoleBoxes } from "./role-boxes.tsx";

export function InviteForm() {
  const router = useRouter();
  const sending = useSend();
  const [made, setMade] = useState<InvitationView | null>(null);
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const element = event.currentTarget;
    const form = new FormData(element);
    const name = textOf(form, "name").trim();
    const invited = await sending.run<InvitationView>("POST", "/api/people/invitations", {
      email: textOf(form, "email"),
      ...(name === "" ? {} : { name }),
      roles: form.getAll("role"),
    });
    if (!invited) return;
    setMade(invited);
    element.reset();
    router.refresh();
  };
  return (
    <>
      <form className={styles.form} onSubmit={submit}>
        <Field label="E-mail" name="email" type="email" required autoComplete="off" />
        <Field label="Name" name="name" maxLength={100} autoComplete="off" hint="They can change it when they join." />
        <RoleBoxes legend="Comes as" />
        <Problem say={sending.problem} />
        <button type="submit" className="button button-strong" aria-disabled={sending.busy}>
          Make a link
        </button>
      </form>
      {made ? (
        <div className={`done ${styles.made}`}>
          <CopyLink link={made.link} label={`Link for ${made.name ?? made.email}: send it to them yourself`} />
          <p className="quiet small">
            It works once, for two weeks. Whoever has it can join, so send it to them alone.
          </p>
        </div>
      ) : null}
    </>
  );
}
