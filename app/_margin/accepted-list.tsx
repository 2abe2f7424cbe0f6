"use client";
import { useFormats } from "#app/_parts/formats.tsx";
import { acceptedWords, useAccepted } from "#app/_session/accepted-now.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { shortDateOf } from "#lib/formats/dates.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
/** Every finding of the plan that a lead accepted, with what does not match any more. In the panel of the class. */
import { findingWords } from "#lib/rules/finding-words.ts";
import { keptFindingWords } from "#lib/rules/kept-words.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";
import { ACCEPT, acceptedBy } from "./accept-words.ts";
import { EndAcceptance } from "./end-acceptance.tsx";
import styles from "./margin.module.css";
import { CHECK_BROKE } from "./margin-words.ts";

export function AcceptedList({ session }: { readonly session: PlanSession }) {
  const snap = useSnapshot(session);
  const { noLonger } = useAccepted(snap);
  const holding = snap.accepted.length - noLonger.length;
  const words = [acceptedWords(holding), noLonger.length > 0 ? `${noLonger.length} no longer` : ""].filter(Boolean);
  return (
    <details className={styles.accepted}>
      <summary>{words.join(", ")}</summary>
      <ul className={styles.slips} aria-label="Accepted findings">
        {snap.accepted.map((one) => (
          <Accepted key={one.id} session={session} accepted={one} holds={!noLonger.includes(one)} />
        ))}
      </ul>
    </details>
  );
}

interface AcceptedProps {
  readonly session: PlanSession;
  readonly accepted: AcceptanceView;
  readonly holds: boolean;
}

function Accepted({ session, accepted, holds }: AcceptedProps) {
  const f = useFormats();
  const { of } = useAccepted(useSnapshot(session));
  const standing = [...of].find(([, { id }]) => id === accepted.id)?.[0];
  return (
    <li className={styles.slip} data-level="info">
      <p className={styles.name}>{ruleTitle(accepted.rule) ?? CHECK_BROKE}</p>
      <p>{standing ? findingWords(standing, f) : keptFindingWords(accepted, f)}</p>
      <p>{acceptedBy(accepted)}</p>
      <p className={styles.byline}>
        <time dateTime={new Date(accepted.at).toISOString()}>{shortDateOf(accepted.at, f)}</time>
      </p>
      {!holds && <p className={styles.pin}>{ACCEPT.noLonger}</p>}
      <div className={styles.slipActs}>
        <EndAcceptance session={session} accepted={accepted} />
      </div>
    </li>
  );
}
