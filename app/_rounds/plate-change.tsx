"use client";
/** In an open plate: what has changed on it, and for a lead whether it is read. */
import { useChangesShown } from "#app/_session/changes-shown.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { ChangeWords } from "./change-words.tsx";
import styles from "./rounds.module.css";
import { CHANGES, pointWords } from "./rounds-words.ts";

interface PlateChangeProps {
  readonly session: PlanSession;
  readonly itemId: string;
}

export function PlateChangePart({ session, itemId }: PlateChangeProps) {
  const { plan } = useSnapshot(session);
  const { plates, marks, rounds, point, setRead } = useChangesShown(session.changes);
  const plate = plates.get(itemId);
  if (!plate) return null;
  const since = rounds?.points.find(({ id }) => id === point);
  const isRead = marks.get(itemId)?.read ?? null;
  return (
    <section className={styles.onPlate} aria-label={CHANGES.label} data-read={isRead || undefined}>
      <p className={styles.onPlateHead}>
        <b>{plate.what === "new" ? "New" : plate.what === "moved" ? "Moved" : "Changed"}</b>{" "}
        {since && pointWords(since, session.me.id)}
        {setRead && isRead !== null && (
          <button type="button" className="act" onClick={() => setRead(itemId, !isRead)}>
            {isRead ? CHANGES.unread : CHANGES.read}
          </button>
        )}
      </p>
      <ChangeWords plate={plate} equipment={plan.equipment} />
    </section>
  );
}
