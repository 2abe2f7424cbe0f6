/** The history of a move: who, when, and each fact before and after. */
import type { MoveRecordLine } from "#server/library/read-move.ts";
import { LocalTime } from "../../_parts/local-time.tsx";
import { ChangeList } from "./change-list.tsx";
import styles from "./move.module.css";

const KIND_WORDS: Readonly<Record<MoveRecordLine["kind"], string>> = {
  added: "added it",
  changed: "changed it",
  archived: "took it out of the library",
  restored: "put it back",
};

export function RecordList({ record }: { readonly record: readonly MoveRecordLine[] }) {
  if (record.length === 0)
    return <p className="quiet">It came with the studio’s first library, and nobody has changed it.</p>;
  return (
    <ol className={styles.record}>
      {record.map((line) => (
        <li key={line.at}>
          <p>
            {line.byName === null
              ? "It came with the studio’s first library"
              : `${line.byName} ${KIND_WORDS[line.kind]}`}
            <span className="quiet small">
              , <LocalTime at={line.at} />
            </span>
          </p>
          <ChangeList changes={line.changes} />
        </li>
      ))}
    </ol>
  );
}
