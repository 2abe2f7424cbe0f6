"use client";
/** People who were removed and may come back, until their account is deleted for good. */
import { useRouter } from "next/navigation";
import { useState } from "react";
import { DeleteDialog } from "./delete-dialog.tsx";
import styles from "./people.module.css";

interface FormerPeopleProps {
  readonly people: readonly { readonly id: string; readonly name: string; readonly email: string }[];
}

export function FormerPeople({ people }: FormerPeopleProps) {
  const router = useRouter();
  const [asking, setAsking] = useState<string | null>(null);
  const done = () => {
    setAsking(null);
    router.refresh();
  };
  if (people.length === 0) return null;
  return (
    <section className={styles.open}>
      <h3>Removed from the studio</h3>
      <ul className={styles.people}>
        {people.map(({ id, name, email }) => (
          <li key={id} className={styles.name}>
            <span>
              <strong>{name}</strong> <span className="quiet small">{email}</span>
            </span>
            <button type="button" className="act" onClick={() => setAsking(id)}>
              Delete<span className="visually-hidden"> {name} for good</span>
            </button>
            {asking === id ? (
              <DeleteDialog person={{ id, name }} me={false} onClose={() => setAsking(null)} onDone={done} />
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
