"use client";
/** Facts of a move before and after, one a line. */
import { useFormats } from "#app/_parts/formats.tsx";
import { factIn, type MoveChange } from "#lib/library/changes.ts";
import styles from "./move.module.css";

export function ChangeList({ changes }: { readonly changes: readonly MoveChange[] }) {
  const f = useFormats();
  if (changes.length === 0) return null;
  return (
    <dl className={styles.changes}>
      {changes.map(({ key, label, before, after }) => (
        <div key={key}>
          <dt>{label}</dt>
          <dd>
            <del>
              <span className="visually-hidden">was </span>
              {factIn(key, before, f)}
            </del>{" "}
            <ins>
              <span className="visually-hidden">is now </span>
              {factIn(key, after, f)}
            </ins>
          </dd>
        </div>
      ))}
    </dl>
  );
}
