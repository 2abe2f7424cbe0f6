"use client";
/** Invitation links that nobody has used yet, to copy or to cancel. */
import { useRouter } from "next/navigation";
import type { InvitationView } from "#server/people/invite.ts";
import { CopyLink } from "../_parts/copy-link.tsx";
import { LocalTime } from "../_parts/local-time.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { ROLE_WORDS } from "../_parts/role-words.ts";
import { useSend } from "../_parts/use-send.ts";
import styles from "./people.module.css";

export function Invitations({ open }: { readonly open: readonly InvitationView[] }) {
  const router = useRouter();
  const sending = useSend();
  const cancel = async (id: string) => {
    if ((await sending.run("DELETE", `/api/people/invitations/${id}`)) !== undefined) router.refresh();
  };
  if (open.length === 0) return null;
  return (
    <section className={styles.open}>
      <h3>Links not used yet</h3>
      <ProblemLine say={sending.problem} />
      <ul className={styles.people}>
        {open.map((invitation) => (
          <li key={invitation.id} className={styles.invitation}>
            <p>
              <strong>{invitation.name ?? invitation.email}</strong>{" "}
              <span className="quiet small">
                {invitation.email} · {invitation.roles.map((role) => ROLE_WORDS[role].name).join(", ")} ·{" "}
                {invitation.expired ? "expired" : "works until"} <LocalTime at={invitation.expiresAt} />
              </span>
            </p>
            {invitation.expired ? null : <CopyLink link={invitation.link} label="Link" />}
            <button type="button" className="act" onClick={() => cancel(invitation.id)} aria-disabled={sending.busy}>
              Cancel<span className="visually-hidden"> the link for {invitation.email}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
