"use client";
/** An accepted finding, folded: who accepted it and why; what was found, and its end, inside. */
import type { PlanSession } from "#app/_session/session.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
import { acceptedBy } from "./accept-words.ts";
import { EndAcceptance } from "./end-acceptance.tsx";
import styles from "./margin.module.css";

interface AcceptedProps {
  readonly session: PlanSession;
  readonly accepted: AcceptanceView;
  readonly message: string;
}

export function AcceptedFinding({ session, accepted, message }: AcceptedProps) {
  return (
    <details className={styles.accepted}>
      <summary>{acceptedBy(accepted)}</summary>
      <p>{message}</p>
      <div className={styles.slipActs}>
        <EndAcceptance session={session} accepted={accepted} />
      </div>
    </details>
  );
}
