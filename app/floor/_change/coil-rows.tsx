/** The coils before and after a change, one row above the other: a spring that stays stands under itself. */
import type { SpringCount } from "#lib/cues/springs.ts";
import type { FloorItem } from "#lib/floor/view.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { FloorCoils } from "../../_parts/coils/floor-coils.tsx";
import styles from "./change.module.css";

interface Props {
  readonly item: FloorItem;
  readonly equipment: Equipment;
  readonly row: "was" | "now";
}

/** Above this many, coils are narrower than they can be told apart: the words say how many. */
const DRAWN = 6;

export function CoilStrip({ item, equipment, row }: Props) {
  const cells = cellsOf(item, equipment);
  if (cells.length > DRAWN) return null;
  return (
    <span className={styles.cells}>
      {cells.map(({ key, spring, was, now }) => {
        const there = row === "was" ? was : now;
        return (
          <span key={key} data-there={there}>
            <FloorCoils springs={[spring]} equipment={equipment} struck={row === "was" && !now} />
          </span>
        );
      })}
    </span>
  );
}

interface Cell {
  readonly key: string;
  readonly spring: SpringCount;
  readonly was: boolean;
  readonly now: boolean;
}

function cellsOf({ was, springs }: FloorItem, equipment: Equipment): Cell[] {
  const order = equipment.springs.map(({ id }) => id);
  const known = new Map([...was, ...springs].map((spring) => [spring.id, spring]));
  const inOrder = [...known.values()].sort((a, b) => order.indexOf(a.id) - order.indexOf(b.id));
  const countIn = (springs: readonly SpringCount[], id: string) => springs.find((one) => one.id === id)?.count ?? 0;
  return inOrder.flatMap((spring) => {
    const [before, after] = [countIn(was, spring.id), countIn(springs, spring.id)];
    return Array.from({ length: Math.max(before, after) }, (_, n) => ({
      key: `${spring.id}-${n}`,
      spring: { ...spring, count: 1 },
      was: n < before,
      now: n < after,
    }));
  });
}
