"use client";
import { useRouter } from "next/navigation";
import type { InvitationView } from "#server/people/invite.ts";
import { Moment } from "../_parts/moment.tsx";
import { Problem } from "../_parts/problem.tsx";
import { useSend } from "../_parts/use-send.ts";
import { ROLE_WORDS } from "../_parts/words.ts";
import { CopyLink } from "./copy-link.tsx";
import styles from "./people.module.css";

export function Invitations({ open }: { readonly open: readonly InvitationView[] }) {
  const router = useRouter();
  const sending = useSend();
  const revoke = async (id: string) => {
    if ((await sending.run("DELETE", `/api/people/invitations/${id}`)) !== undefined) router.refresh();
  };
  if (open.length === 0) return null;
  return (
    <section className={styles.open}>
      <h3>Links not used yet</h3>
      <Problem say={sending.problem} />
      <ul className={styles.people}>
        {open.map((invitation) => (
          <li key={invitation.id} className={styles.invitation}>
            <p>
              <strong>{invitation.name ?? invitation.email}</strong>{" "}
              <span className="quiet small">
                {invitation.email} · {invitation.roles.map((role) => ROLE_WORDS[role].name).join(", ")} ·{" "}
                {invitation.expired ? "has run out" : "works until"} <Moment at={invitation.expiresAt} />
              </span>
            </p>
            {invitation.expired ? null : <CopyLink link={invitation.link} label="Link" />}
            <button type="button" className="act" onClick={() => revoke(invitation.id)} aria-disabled={sending.busy}>
              Take back<span className="visually-hidden"> the link for {invitation.email}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
