"use client";
/** One person, and what a manager can do about them. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import type { Role } from "#lib/policy/can.ts";
import { Dialog } from "../_parts/dialog.tsx";
import { Problem } from "../_parts/problem.tsx";
import { useSend } from "../_parts/use-send.ts";
import { ROLE_WORDS } from "../_parts/words.ts";
import styles from "./people.module.css";
import { ResetDialog } from "./reset-dialog.tsx";
import { RoleBoxes } from "./role-boxes.tsx";

interface Shown {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
}
type Asking = "roles" | "reset" | "remove" | null;

export function PersonRow({ person, me }: { readonly person: Shown; readonly me: boolean }) {
  const router = useRouter();
  const sending = useSend();
  const [asking, setAsking] = useState<Asking>(null);
  const [said, setSaid] = useState("");
  const of = <span className="visually-hidden"> of {person.name}</span>;
  const done = () => {
    setAsking(null);
    router.refresh();
  };
  const endSessions = async () => {
    const ended = await sending.run<{ ended: number }>("POST", `/api/people/${person.id}/end-sessions`, {});
    if (!ended) return;
    setSaid(ended.ended === 0 ? "Was not signed in anywhere." : "Signed out everywhere.");
    router.refresh();
  };
  return (
    <li className={styles.person}>
      <span>
        <strong>{person.name}</strong>
        {me ? <span className="quiet"> you</span> : null}
        <br />
        <span className="quiet small">{person.email}</span>
      </span>
      <span>{person.roles.map((role) => ROLE_WORDS[role].name).join(", ")}</span>
      <span className={styles.acts}>
        <button type="button" className="act" onClick={() => setAsking("roles")}>
          Roles{of}
        </button>
        <button type="button" className="act" onClick={endSessions} aria-disabled={sending.busy}>
          End sessions{of}
        </button>
        {me ? null : (
          <button type="button" className="act" onClick={() => setAsking("reset")}>
            Reset link<span className="visually-hidden"> for {person.name}</span>
          </button>
        )}
        {me ? null : (
          <button type="button" className="act" onClick={() => setAsking("remove")}>
            Remove<span className="visually-hidden"> {person.name}</span>
          </button>
        )}
      </span>
      <span className={styles.said} role="status">
        {said}
      </span>
      {asking === null ? <Problem say={sending.problem} /> : null}
      {asking === "roles" ? <RolesDialog person={person} onClose={() => setAsking(null)} onDone={done} /> : null}
      {asking === "reset" ? <ResetDialog person={person} onClose={() => setAsking(null)} /> : null}
      {asking === "remove" ? <RemoveDialog person={person} onClose={() => setAsking(null)} onDone={done} /> : null}
    </li>
  );
}

interface AskProps {
  readonly person: Shown;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

function RolesDialog({ person, onClose, onDone }: AskProps) {
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const roles = new FormData(event.currentTarget).getAll("role");
    if ((await sending.run("PATCH", `/api/people/${person.id}`, { roles })) !== undefined) onDone();
  };
  return (
    <Dialog title={`Roles of ${person.name}`} onClose={onClose}>
      <form className={styles.form} onSubmit={submit}>
        <RoleBoxes legend="May do" chosen={person.roles} />
        <p className="quiet small">The change counts at once, on pages that are open too.</p>
        <Problem say={sending.problem} />
        <button type="submit" className="button button-strong" aria-disabled={sending.busy}>
          Keep these roles
        </button>
      </form>
    </Dialog>
  );
}

function RemoveDialog({ person, onClose, onDone }: AskProps) {
  const sending = useSend();
  const remove = async () => {
    if ((await sending.run("DELETE", `/api/people/${person.id}`)) !== undefined) onDone();
  };
  return (
    <Dialog title={`Remove ${person.name}?`} onClose={onClose}>
      <div className={styles.form}>
        <p>
          They can no longer sign in, and every page they have open closes. Their plans, comments and signatures stay. A
          new invitation to the same address brings them back to them.
        </p>
        <Problem say={sending.problem} />
        <button type="button" className="button button-must" onClick={remove} aria-disabled={sending.busy}>
          Remove {person.name}
        </button>
      </div>
    </Dialog>
  );
}
