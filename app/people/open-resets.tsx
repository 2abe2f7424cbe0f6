"use client";
/** Reset links that can still be used, so that managers know of every one and can cancel it. */
import { useRouter } from "next/navigation";
import type { OpenReset } from "#server/people/open-resets.ts";
import { LocalTime } from "../_parts/local-time.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./people.module.css";

export function OpenResets({ open }: { readonly open: readonly OpenReset[] }) {
  const router = useRouter();
  const sending = useSend();
  const cancel = async (id: string) => {
    await sending.run("DELETE", `/api/people/reset-links/${id}`);
    // Also where it was refused: somebody has used or cancelled it meanwhile.
    router.refresh();
  };
  if (open.length === 0 && sending.problem === null) return null;
  return (
    <section className={styles.open}>
      <h3>Reset links not used yet</h3>
      <ProblemLine say={sending.problem} />
      <ul className={styles.people}>
        {open.map(({ id, forName, forEmail, byName, byMail, expiresAt }) => (
          <li key={id} className={styles.invitation}>
            <p>
              <strong>{forName}</strong>{" "}
              <span className="quiet small">
                {forEmail} ·{" "}
                {byMail ? "asked for and mailed" : `made ${byName === null ? "on the server" : `by ${byName}`}`} · works
                until <LocalTime at={expiresAt} />
              </span>
            </p>
            <button type="button" className="act" onClick={() => cancel(id)} aria-disabled={sending.busy}>
              Cancel<span className="visually-hidden"> the reset link for {forName}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
