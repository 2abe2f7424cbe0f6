/** Under the name: the side, the springs and the block. A side has a shape as well as a word. */
import type { FloorView } from "#lib/floor/view.ts";
import { sideWords, springWords } from "#lib/plan/format.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { FloorCoils } from "../../_parts/coils/floor-coils.tsx";
import styles from "../_class/live-class.module.css";

export function Doing({ view, equipment }: { view: FloorView; equipment: Equipment }) {
  const { item, block, phase } = view;
  if (item?.kind !== "move") return <p className={styles.doing}>{item ? block : null}</p>;
  const oneSided = item.side === "left" || item.side === "right";
  const counts = Object.fromEntries(item.springs.map((spring) => [spring.id, spring.count]));
  return (
    <p className={styles.doing}>
      {phase === "change" && <strong className={styles.tag}>Change to this</strong>}
      {item.side && item.side !== "both" && (
        <span className={styles.side} data-side={item.side}>
          {oneSided ? `${sideWords(item.side)} side` : sideWords(item.side)}
        </span>
      )}
      <span className={styles.springs}>
        <FloorCoils springs={item.springs} equipment={equipment} /> {springWords(equipment, counts)}
      </span>
      {block && <span className={styles.block}>{block}</span>}
    </p>
  );
}
