/** The change to come on the crew's screen: what to do, in order, then which springs are on. In the words of the call. */
import type { FloorItem } from "#lib/floor/view.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { FloorCoils } from "../../_parts/coils/floor-coils.tsx";
import styles from "./follow.module.css";

interface Props {
  readonly item: FloorItem;
  readonly equipment: Equipment;
  /** Nobody confirms that this is the change, so every act gets a question mark. */
  readonly unsure: boolean;
}

export function Acts({ item, equipment, unsure }: Props) {
  if (item.nowOn === null) return null;
  const maybe = unsure ? "?" : "";
  return (
    <div className={styles.changes}>
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
