"use client";
/** A reset link for somebody who forgot their password: made after a question, shown once. */
import { useRouter } from "next/navigation";
import { useState } from "react";
import type { ResetLink } from "#server/people/reset-password.ts";
import { CopyLink } from "../_parts/copy-link.tsx";
import { Dialog } from "../_parts/dialog.tsx";
import { LocalTime } from "../_parts/local-time.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./people.module.css";

interface ResetDialogProps {
  readonly person: { readonly id: string; readonly name: string };
  readonly onClose: () => void;
}

export function ResetDialog({ person, onClose }: ResetDialogProps) {
  const router = useRouter();
  const sending = useSend();
  const [made, setMade] = useState<ResetLink | null>(null);
  const make = async () => {
    const link = await sending.run<ResetLink>("POST", `/api/people/${person.id}/reset-link`, {});
    if (!link) return;
    setMade(link);
    router.refresh();
  };
  return (
    <Dialog title={`Reset link for ${person.name}`} onClose={onClose}>
      <div className={styles.form}>
        {made ? (
          <>
            <CopyLink link={made.link} label="Send it to them yourself" />
            <p className="quiet small">
              It works once, until <LocalTime at={made.expiresAt} />, and is not shown again. Anyone who has it can sign
              in as {person.name}, so send it only to them.
            </p>
          </>
        ) : (
          <>
            <p>
              With the link they choose a new password and are signed out everywhere else. An older reset link stops
              working. The studio’s record shows that you made this one.
            </p>
            <ProblemLine say={sending.problem} />
            <button type="button" className="button button-strong" onClick={make} aria-disabled={sending.busy}>
              Make a reset link
            </button>
          </>
        )}
      </div>
    </Dialog>
  );
}
