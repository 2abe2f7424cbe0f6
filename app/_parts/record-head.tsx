/** The head of the record as it is now, whole, with how to check it: on every signed sheet, and where the record is read. */
import type { RecordHead } from "#lib/record/chain.ts";
import { headText } from "#lib/record/chain.ts";
import styles from "./record-head.module.css";

interface Props {
  readonly head: RecordHead;
  /** On paper: when it was drawn is said elsewhere on the sheet. */
  readonly className?: string | undefined;
}

/** Nothing while the record is empty. */
export function RecordHeadLine({ head, className }: Props) {
  if (head.seq === 0) return null;
  return (
    <p className={`${styles.head} ${className ?? ""}`}>
      <strong>Record</strong> <code>{headText(head)}</code>
      <br />
      To check on the server that nothing up to here was changed since:{" "}
      <code className={styles.command}>npm run -s record -- verify --head</code> and this number and hash.
    </p>
  );
}
