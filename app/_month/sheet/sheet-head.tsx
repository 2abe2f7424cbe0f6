/** The heads of the sheet's columns: the hours, the muscle groups, the coaches with what they teach. */

import { useFormats } from "#app/_parts/formats.tsx";
import { hourWords } from "#lib/formats/dates.ts";
import styles from "./sheet.module.css";
import type { SheetShown } from "./sheet-types.ts";

interface HeadProps {
  readonly shown: SheetShown;
  readonly onCoach: (coach: string | null) => void;
}

/** Long because: one row of heads, in the order of the columns. */
export function SheetHead({ shown, onCoach }: HeadProps) {
  const f = useFormats();
  const { sheet, layout } = shown;
  return (
    <thead>
      <tr>
        <th scope="col" className={styles.dateHead}>
          <span className="visually-hidden">Day</span>
        </th>
        <th scope="col" className={styles.railHead}>
          <span className="visually-hidden">Classes</span>
          {layout.kind !== "phone" &&
            sheet.axis.ticks.map(({ minute, x, time }) => (
              <span key={minute} className={styles.tick} style={{ left: x }} aria-hidden="true">
                {hourWords(time, f)}
              </span>
            ))}
        </th>
        {sheet.columns.map(({ group, words, strong, region }) => (
          <th
            key={group}
            scope="col"
            className={styles.groupHead}
            data-strong={strong ? "" : undefined}
            data-tide={region}
          >
            <span>{words}</span>
          </th>
        ))}
        {layout.kind === "laptop" && (
          <th scope="col" className={`${styles.groupHead} ${styles.likeHead}`}>
            <span>like the last, %</span>
          </th>
        )}
        {sheet.coaches.slice(0, layout.coaches).map(({ id, name, total }) => (
          <th
            key={id}
            scope="col"
            className={styles.coachHead}
            onPointerEnter={() => onCoach(id)}
            onPointerLeave={() => onCoach(null)}
          >
            <span>
              <b>{name}</b> {total}
            </span>
          </th>
        ))}
        {layout.findings > 0 && (
          <th scope="col">
            <span className="visually-hidden">To fix</span>
          </th>
        )}
      </tr>
    </thead>
  );
}
