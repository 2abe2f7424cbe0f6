/** For the whole room: the seconds as large as they go, the move, and what comes. */
import { Doing } from "../_parts/doing.tsx";
import { Board } from "./board.tsx";
import styles from "./follow.module.css";
import type { ViewProps } from "./view-props.ts";

export function WallView(props: ViewProps) {
  const { view, card } = props;
  const standing = (
    <div className={styles.onNow}>
      <Doing view={view} equipment={card.plan.equipment} />
    </div>
  );
  return <Board {...props} kind="wall" standing={standing} />;
}
