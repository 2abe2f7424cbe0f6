/** A change on a screen that follows: the acts in the order of hands and feet, then what is on. The words are the call's own. */
import type { FloorItem } from "#lib/floor/view.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { FloorCoils } from "../../_parts/coils/floor-coils.tsx";
import styles from "./follow.module.css";

interface Props {
  readonly item: FloorItem;
  readonly equipment: Equipment;
  /** What matters now, in the largest type; else beside it. */
  readonly large: boolean;
  /** Nobody confirms that this is the change: every act is a question. */
  readonly unsure: boolean;
}

export function Acts({ item, equipment, large, unsure }: Props) {
  if (item.nowOn === null) return null;
  const maybe = unsure ? "?" : "";
  return (
    <div className={styles.changes} data-large={large}>
      {unsure && (
        <p className={styles.perhaps} data-fit>
          perhaps:
        </p>
      )}
      <ol className={styles.steps} aria-label={unsure ? "What may change" : "What to change"}>
        {item.acts.map((act) => (
          <li key={act.words} data-fit>
            {act.springs && act.springs.length > 0 && <FloorCoils springs={act.springs} equipment={equipment} />}{" "}
            {act.words}
            {maybe}
          </li>
        ))}
      </ol>
      <p className={styles.nowOn} data-fit>
        {item.nowOn}
        {maybe}
      </p>
    </div>
  );
}
