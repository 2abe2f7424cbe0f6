/** A page of paper for a signed edition: the way back, the print button, and a head that says which edition it is. */
import type { CSSProperties, ReactNode } from "react";
import { DateText, WithdrawnText } from "#app/_parts/reader-words.tsx";
import type { Card } from "#lib/card/schema.ts";
import { clockTime } from "#lib/plan/format.ts";
import type { Withdrawal } from "#lib/protocol/messages.ts";
import { headText, type RecordHead } from "#lib/record/chain.ts";
import { PrintButton } from "./print-button.tsx";
import styles from "./printed-class.module.css";

export interface SignedProps {
  readonly card: Card;
  /** ms since the epoch. */
  readonly signedAt: number;
  readonly signedBy: string;
  readonly withdrawn: Withdrawal | null;
  /** What the lead wrote with the sign-off. */
  readonly note?: string | null;
  /** As it was when the sheet was drawn. */
  readonly record: RecordHead;
}

interface PaperProps extends SignedProps {
  readonly title: string;
  readonly className?: string | undefined;
  readonly style?: CSSProperties;
  readonly children: ReactNode;
}

export function SignedPaper({ title, className = "", style, children, ...signed }: PaperProps) {
  return (
    <main className={styles.ground}>
      <p className={styles.tools}>
        <a className="button" href="/desk">
          Back to your desk
        </a>
        <a className="button" href="/help">
          Help
        </a>
        <PrintButton />
      </p>
      <article className={`${styles.sheet} ${className}`} style={style}>
        <Head title={title} {...signed} />
        {children}
        <RecordOnPaper head={signed.record} />
      </article>
    </main>
  );
}

/** Whole: whoever has the sheet can show later that the record was rewritten. Nothing while there is no record. */
function RecordOnPaper({ head }: { readonly head: RecordHead }) {
  if (head.seq === 0) return null;
  return (
    <p className={styles.record}>
      <strong>Record</strong> <code>{headText(head)}</code> Given this number and hash,{" "}
      <code className={styles.together}>npm run -s record -- verify --head</code> on the server shows whether anything
      up to here was changed since.
    </p>
  );
}

function Head({ title, card, signedAt, signedBy, withdrawn, note }: SignedProps & { readonly title: string }) {
  const { edition, plan, clock, room, studio } = card;
  return (
    <header className={styles.head}>
      <div>
        <h1>{title}</h1>
        <p>
          {studio.name}
          {studio.town && `, ${studio.town}`} · {plan.equipment.name.startsWith(room.name) ? "" : `${room.name} · `}
          {plan.equipment.name}
        </p>
        {note && <p>Note: {note}</p>}
      </div>
      <div className={styles.edition}>
        <p className={styles.length}>{clockTime(clock.total)}</p>
        <p>
          edition {edition.number} · <strong>{edition.shortName}</strong>
        </p>
        <p>
          signed off by {signedBy}, <DateText at={signedAt} />
        </p>
        {withdrawn && (
          <p>
            <strong>
              <WithdrawnText of={withdrawn} />
            </strong>
          </p>
        )}
      </div>
    </header>
  );
}
