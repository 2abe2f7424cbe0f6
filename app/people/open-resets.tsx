"use client";
/** Reset links that somebody could still use, so that no link lies about that no manager knows of. */
import { useRouter } from "next/navigation";
import type { OpenReset } from "#server/people/open-resets.ts";
import { Moment } from "../_parts/moment.tsx";
import { Problem } from "../_parts/problem.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./people.module.css";

export function OpenResets({ open }: { readonly open: readonly OpenReset[] }) {
  const router = useRouter();
  const sending = useSend();
  const withdraw = async (id: string) => {
    await sending.run("DELETE", `/api/people/reset-links/${id}`);
    // Also where it was refused: somebody has used or withdrawn it meanwhile.
    router.refresh();
  };
  if (open.length === 0 && sending.problem === null) return null;
  return (
    <section className={styles.open}>
      <h3>Reset links not used yet</h3>
      <Problem say={sending.problem} />
      <ul className={styles.people}>
        {open.map(({ id, forName, forEmail, byName, expiresAt }) => (
          <li key={id} className={styles.invitation}>
            <p>
              <strong>{forName}</strong>{" "}
              <span className="quiet small">
                {forEmail} · made {byName === null ? "on the server" : `by ${byName}`} · works until{" "}
                <Moment at={expiresAt} />
              </span>
            </p>
            <button type="button" className="act" onClick={() => withdraw(id)} aria-disabled={sending.busy}>
              Take back<span className="visually-hidden"> the reset link for {forName}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
