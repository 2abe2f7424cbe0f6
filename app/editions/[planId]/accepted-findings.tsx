/** Findings that a lead accepted as they stood, each with the reason. */
import { LocalTime } from "#app/_parts/local-time.tsx";
import { plural } from "#lib/plan/format.ts";
import type { AcceptedThere } from "#server/editions/editions.ts";
import styles from "./editions.module.css";

interface Props {
  readonly accepted: readonly AcceptedThere[];
  /** Only their number at first. */
  readonly folded?: boolean;
}

export function AcceptedFindings({ accepted, folded = false }: Props) {
  if (accepted.length === 0) return null;
  const list = (
    <ul className={styles.findings}>
      {accepted.map(({ message, reason, byName, at }) => (
        <li key={`${message} ${reason}`}>
          <p>{message}</p>
          <p className={styles.reason}>
            <b>Accepted by {byName}</b>
            {at !== null && (
              <>
                , <LocalTime at={at} />
              </>
            )}
            : {reason}
          </p>
        </li>
      ))}
    </ul>
  );
  if (!folded) return list;
  return (
    <details>
      <summary>{plural(accepted.length, "accepted finding")}</summary>
      {list}
    </details>
  );
}
