"use client";
/** Invites somebody by a link, which the manager sends to them. */
import { useRouter } from "next/navigation";
import { type FormEvent, useRef, useState } from "react";
import type { LinkMailed } from "#server/mail/send-link.ts";
import type { InvitationView } from "#server/people/invite.ts";
import { CopyLink } from "../_parts/copy-link.tsx";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useAskedFor } from "../_parts/use-asked-for.ts";
import { useSend } from "../_parts/use-send.ts";
import { HowItWent, SendByMail } from "./by-mail.tsx";
import styles from "./people.module.css";
import { RoleBoxes, useRoles } from "./role-boxes.tsx";

const INVITATIONS = "/api/people/invitations";
type Made = InvitationView & { readonly mailed?: LinkMailed };

export function InviteForm({ byMail }: { readonly byMail: boolean }) {
  const router = useRouter();
  const sending = useSend();
  const chosen = useRoles();
  const form = useRef<HTMLFormElement>(null);
  useAskedFor("invite", () => form.current?.querySelector("input")?.focus());
  const [made, setMade] = useState<Made | null>(null);
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const element = event.currentTarget;
    const roles = chosen.roles(element);
    if (!roles) return sending.clear();
    const invited = await sending.run<Made>("POST", INVITATIONS, inviteBody(new FormData(element), roles));
    if (!invited) return;
    setMade(invited);
    element.reset();
    router.refresh();
  };
  return (
    <>
      <form ref={form} className={styles.form} onSubmit={submit}>
        <FormField label="Email" name="email" type="email" required autoComplete="off" />
        <FormField
          label="Name"
          name="name"
          maxLength={100}
          autoComplete="off"
          hint="They can change it when they join."
        />
        <RoleBoxes legend="Roles" problem={chosen.problem} />
        {byMail && <SendByMail />}
        <ProblemLine say={sending.problem} />
        <SendButton busy={sending.busy} doing="Making the link…">
          Make a link
        </SendButton>
      </form>
      {made ? <MadeLink made={made} /> : null}
    </>
  );
}

function inviteBody(typed: FormData, roles: readonly FormDataEntryValue[]) {
  const name = textOf(typed, "name").trim();
  return {
    email: textOf(typed, "email"),
    ...(name === "" ? {} : { name }),
    roles,
    send: typed.has("send"),
  };
}

function MadeLink({ made }: { readonly made: Made }) {
  const label = `Link for ${made.name ?? made.email}${made.mailed?.sent ? "" : ": send it to them yourself"}`;
  return (
    <div className={`done ${styles.made}`}>
      <HowItWent mailed={made.mailed} to={made.email} />
      <CopyLink link={made.link} label={label} />
      <p className="quiet small">It works once, for two weeks. Anyone who has it can join, so send it only to them.</p>
    </div>
  );
}
