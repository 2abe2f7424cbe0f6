/** What is still missing in a move: not an error, but something in a class will not work without it. */
import Link from "next/link";
import { factLabel } from "#lib/library/changes.ts";
import type { MoveDoubt } from "#lib/library/doubts.ts";
import styles from "./move.module.css";

export function DoubtList({ doubts }: { readonly doubts: readonly MoveDoubt[] }) {
  if (doubts.length === 0) return null;
  return (
    <ul className={styles.doubts}>
      {doubts.map(({ key, say, rule }) => (
        <li key={say} className="notice">
          <span className={styles.doubtKey}>{factLabel(key)}</span> {say}{" "}
          {rule ? (
            <Link className="small" href={`/rules/${rule}`} prefetch={false}>
              the rule
            </Link>
          ) : null}
        </li>
      ))}
    </ul>
  );
}
