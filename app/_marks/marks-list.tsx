/** Marks that were set, each with its levels as the rubric said them then. */
import Link from "next/link";
import { LocalTime } from "#app/_parts/local-time.tsx";
import type { MarksView } from "#server/marks/marks-view.ts";
import styles from "./marks.module.css";
import { levelWords, MARKS } from "./marks-words.ts";

interface ListProps {
  readonly marks: readonly (MarksView & { readonly ofName?: string })[];
  /** Names the person on each. */
  readonly showWhom?: boolean;
}

export function MarksList({ marks, showWhom = false }: ListProps) {
  return (
    <ul className={styles.list}>
      {marks.map((one) => (
        <li key={one.id} id={`marks-${one.id}`} className={styles.one} data-replaced={one.replaced || undefined}>
          <p>
            <b>{one.round === null ? "A class" : `Round ${one.round}`}</b>
            {showWhom && one.ofName ? (
              <>
                , <Link href={`/people/${one.userId}`}>{one.ofName}</Link>
              </>
            ) : null}{" "}
            · by {one.byName}, <LocalTime at={one.at} />
            {one.replaced ? <span className="quiet"> · {MARKS.replaced}</span> : null}
          </p>
          <p className={styles.sentence}>{one.sentence}</p>
          <details>
            <summary>Levels</summary>
            <dl className={styles.levels}>
              {one.rubric.criteria.flatMap(({ id, name, levels }) => {
                const level = one.levels[id];
                if (level === undefined) return [];
                return [
                  <div key={id}>
                    <dt>
                      {name} <span className="mono">{levelWords(level, levels.length)}</span>
                    </dt>
                    <dd>{levels[level - 1]}</dd>
                  </div>,
                ];
              })}
            </dl>
          </details>
        </li>
      ))}
    </ul>
  );
}
