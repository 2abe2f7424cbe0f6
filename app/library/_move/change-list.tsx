/** Facts of a move before and after, one a line. */
import type { MoveChange } from "#lib/library/changes.ts";
import styles from "./move.module.css";

export function ChangeList({ changes }: { readonly changes: readonly MoveChange[] }) {
  if (changes.length === 0) return null;
  return (
    <dl className={styles.changes}>
      {changes.map(({ key, label, before, after }) => (
        <div key={key}>
          <dt>{label}</dt>
          <dd>
            <del>
              <span className="visually-hidden">was </span>
              {before}
            </del>{" "}
            <ins>
              <span className="visually-hidden">is now </span>
              {after}
            </ins>
          </dd>
        </div>
      ))}
    </dl>
  );
}
