/** For the whole room: the seconds as large as they go, the move, and what comes. */

import { titled } from "../_parts/coming.tsx";
import { Doing } from "../_parts/doing.tsx";
import { FitText } from "../_parts/fit-text.tsx";
import { Figure } from "./figure.tsx";
import styles from "./follow.module.css";
import { nowWords, type ViewProps } from "./view-props.ts";

export function WallView({ view, card, sizes }: ViewProps) {
  const name = nowWords(view);
  return (
    <section className={styles.wall} aria-label="Now">
      <Figure view={view} />
      <div className={styles.wallNow}>
        <FitText className={styles.name} sizes={sizes.name} text={name}>
          {name}
        </FitText>
        <Doing view={view} equipment={card.plan.equipment} />
      </div>
      <p className={styles.wallNext} data-near={view.headsUp}>
        <span className={styles.label}>next</span> {view.next ? titled(view.next) : "nothing more"}
      </p>
    </section>
  );
}
