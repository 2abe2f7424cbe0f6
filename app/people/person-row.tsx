"use client";
/** One person, and what a manager can do about them. */
import Link from "next/link";
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import * as z from "zod/mini";
import type { Role } from "#lib/policy/can.ts";
import { Dialog } from "../_parts/dialog.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { ROLE_WORDS } from "../_parts/role-words.ts";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import { DeleteDialog } from "./delete-dialog.tsx";
import styles from "./people.module.css";
import { ResetDialog } from "./reset-dialog.tsx";
import { RoleBoxes, useRoles } from "./role-boxes.tsx";

interface Shown {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
}
type Asking = "roles" | "reset" | "remove" | "delete" | null;

interface PersonRowProps {
  readonly person: Shown;
  readonly me: boolean;
  /** The studio sends e-mail. */
  readonly byMail: boolean;
}

export function PersonRow({ person, me, byMail }: PersonRowProps) {
  const router = useRouter();
  const sending = useSend();
  const [asking, setAsking] = useState<Asking>(null);
  const [said, setSaid] = useState("");
  const close = () => setAsking(null);
  const endSessions = async () => {
    const url = `/api/people/${person.id}/end-sessions`;
    const ended = await sending.run("POST", url, {}, { reads: endedSchema });
    if (!ended) return;
    setSaid(
      ended.ended === 0 ? `${person.name} was not signed in anywhere.` : `${person.name} is signed out everywhere.`,
    );
    router.refresh();
  };
  return (
    <li className={styles.person}>
      <span>
        <Link href={`/people/${person.id}`}>
          <strong>{person.name}</strong>
        </Link>
        {me ? <span className="quiet"> you</span> : null}
        <br />
        <span className="quiet small">{person.email}</span>
      </span>
      <span>{person.roles.map((role) => ROLE_WORDS[role].name).join(", ")}</span>
      <Acts person={person} me={me} busy={sending.busy} onAsk={setAsking} onEndSessions={endSessions} />
      <span className={styles.said} role="status">
        {said}
      </span>
      {asking === null ? <ProblemLine say={sending.problem} /> : <Asked {...{ asking, person, me, byMail, close }} />}
    </li>
  );
}

interface AskedProps extends PersonRowProps {
  readonly asking: Asking;
  readonly close: () => void;
}

/** The dialog of an act that asks first. */
function Asked({ asking, person, me, byMail, close }: AskedProps) {
  const router = useRouter();
  const done = () => {
    close();
    router.refresh();
  };
  const ways = { person, onClose: close, onDone: done };
  if (asking === "roles") return <RolesDialog {...ways} />;
  if (asking === "reset") return <ResetDialog person={person} byMail={byMail} onClose={close} />;
  if (asking === "remove") return <RemoveDialog {...ways} />;
  if (asking !== "delete") return null;
  // After one's own account there is no page left to refresh.
  return <DeleteDialog {...ways} me={me} onDone={me ? () => window.location.assign("/sign-in") : done} />;
}

/** How many sessions there were. */
const endedSchema = z.object({ ended: z.number() });

interface ActsProps {
  readonly person: Shown;
  readonly me: boolean;
  readonly busy: boolean;
  readonly onAsk: (asking: Asking) => void;
  readonly onEndSessions: () => void;
}

function Acts({ person, me, busy, onAsk, onEndSessions }: ActsProps) {
  return (
    <span className={styles.acts}>
      <button type="button" className="act" onClick={() => onAsk("roles")}>
        Roles<span className="visually-hidden"> of {person.name}</span>
      </button>
      <button type="button" className="act" onClick={onEndSessions} aria-disabled={busy}>
        Sign out everywhere<span className="visually-hidden">: {person.name}</span>
      </button>
      {me ? null : (
        <>
          <button type="button" className="act" onClick={() => onAsk("reset")}>
            Reset link<span className="visually-hidden"> for {person.name}</span>
          </button>
          <button type="button" className="act" onClick={() => onAsk("remove")}>
            Remove<span className="visually-hidden"> {person.name}</span>
          </button>
        </>
      )}
      <button type="button" className="act" onClick={() => onAsk("delete")}>
        Delete<span className="visually-hidden"> {person.name} for good</span>
      </button>
    </span>
  );
}

interface AskProps {
  readonly person: Shown;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

function RolesDialog({ person, onClose, onDone }: AskProps) {
  const sending = useSend();
  const chosen = useRoles();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const roles = chosen.roles(event.currentTarget);
    if (!roles) return sending.clear();
    if ((await sending.run("PATCH", `/api/people/${person.id}`, { roles })) !== undefined) onDone();
  };
  return (
    <Dialog title={`Roles of ${person.name}`} onClose={onClose}>
      <form className={styles.form} onSubmit={submit}>
        <RoleBoxes legend="Roles" chosen={person.roles} problem={chosen.problem} />
        <p className="quiet small">The change takes effect at once, on open pages too.</p>
        <ProblemLine say={sending.problem} />
        <SendButton busy={sending.busy} doing="Saving…">
          Save the roles
        </SendButton>
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
          They can no longer sign in, and the pages they have open close. Their name, plans, comments and signatures
          stay. If you invite the same address again, they get all of it back.
        </p>
        <ProblemLine say={sending.problem} />
        <button type="button" className="button button-must" onClick={remove} aria-disabled={sending.busy}>
          Remove {person.name}
        </button>
      </div>
    </Dialog>
  );
}
