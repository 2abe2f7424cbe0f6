"use client";
/** A reset link for somebody who forgot their password: made after a question, shown once. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import type { LinkMailed } from "#server/mail/send-link.ts";
import type { ResetLink } from "#server/people/reset-password.ts";
import { CopyLink } from "../_parts/copy-link.tsx";
import { Dialog } from "../_parts/dialog.tsx";
import { LocalTime } from "../_parts/local-time.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import { HowItWent, SendByMail } from "./by-mail.tsx";
import styles from "./people.module.css";

interface ResetDialogProps {
  readonly person: { readonly id: string; readonly name: string; readonly email: string };
  /** The studio sends e-mail. */
  readonly byMail: boolean;
  readonly onClose: () => void;
}

type Made = ResetLink & { readonly mailed?: LinkMailed };

export function ResetDialog({ person, byMail, onClose }: ResetDialogProps) {
  const router = useRouter();
  const sending = useSend();
  const [made, setMade] = useState<Made | null>(null);
  const make = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const body = { send: new FormData(event.currentTarget).has("send") };
    const link = await sending.run<Made>("POST", `/api/people/${person.id}/reset-link`, body);
    if (!link) return;
    setMade(link);
    router.refresh();
  };
  return (
    <Dialog title={`Reset link for ${person.name}`} onClose={onClose}>
      {made ? (
        <div className={styles.form}>
          <HowItWent mailed={made.mailed} to={person.email} />
          <CopyLink link={made.link} label={made.mailed?.sent ? "The link" : "Send it to them yourself"} />
          <p className="quiet small">
            It works once, until <LocalTime at={made.expiresAt} />, and is not shown again. Anyone who has it can sign
            in as {person.name}, so send it only to them.
          </p>
        </div>
      ) : (
        <form className={styles.form} onSubmit={make}>
          <p>
            With the link they choose a new password and are signed out everywhere else. An older reset link stops
            working. The studio’s record shows that you made this one.
          </p>
          {byMail && <SendByMail />}
          <ProblemLine say={sending.problem} />
          <SendButton busy={sending.busy} doing="Making the link…">
            Make a reset link
          </SendButton>
        </form>
      )}
    </Dialog>
  );
}
