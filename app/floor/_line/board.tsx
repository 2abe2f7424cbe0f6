/**
 * Wall and demonstrator: one thing large. In work the move; when its end is near, the one that comes; in a change, its acts.
 * The seconds have a column of their own, as wide as they are.
 */
import type { ReactNode } from "react";
import { secondsFigure } from "#lib/floor/time-words.ts";
import { titled } from "../_parts/coming.tsx";
import { Fitted } from "../_parts/fitted.tsx";
import { Acts } from "./acts.tsx";
import { Figure } from "./figure.tsx";
import styles from "./follow.module.css";
import { nowWords, type ViewProps } from "./view-props.ts";

interface Props extends ViewProps {
  readonly kind: "wall" | "demonstrator";
  /** How the move stands, under its name. */
  readonly standing: ReactNode;
  /** What else is read at this moment, and what its words are. */
  readonly aside?: { readonly words: string; readonly shown: ReactNode };
}

/** The most of the screen's height and width that the seconds take. */
const FIGURE_SHARE = { wall: [0.82, 0.36], demonstrator: [0.4, 0.22] } as const;

export function Board({ view, card, distanceM, unsure, kind, standing, aside }: Props) {
  const { equipment } = card.plan;
  const changing = view.phase === "change" && view.item !== null;
  const near = view.headsUp && view.next !== null && !changing;
  const figure = secondsFigure(view.secondsLeft);
  const [high, wide] = FIGURE_SHARE[kind];
  const shown = [
    view.phase,
    nowWords(view),
    view.item?.side,
    near,
    view.next?.id,
    figure.length,
    unsure,
    aside?.words,
    view.held,
  ];
  return (
    <Fitted
      className={styles.board}
      label="Now"
      distanceM={distanceM}
      text={shown.join("|")}
      gives={changing || near ? [] : ["what comes next"]}
      sizes={(width, height) => ({
        main: Math.min(kind === "wall" ? 300 : 200, height * 0.34),
        figure: Math.min(height * high, (width * wide) / (figure.length > 2 ? 1.9 : 1)),
      })}
    >
      <div className={styles.words}>
        {near && view.next ? (
          <>
            <h1 className={styles.lesser} data-fit>
              {nowWords(view)}
            </h1>
            <p className={styles.comes} data-fit>
              {unsure ? "perhaps next" : "coming up"}
            </p>
            <h2 className={styles.name} data-fit>
              {titled(view.next)}
            </h2>
            <Acts item={view.next} equipment={equipment} large={false} unsure={unsure} />
          </>
        ) : (
          <>
            <h1 className={changing ? styles.lesser : styles.name} data-fit>
              {changing && <span className={styles.tag}>{unsure ? "perhaps change to" : "change to"}</span>}{" "}
              {view.item ? titled(view.item) : nowWords(view)}
            </h1>
            {changing && view.item ? <Acts item={view.item} equipment={equipment} large unsure={unsure} /> : standing}
            {aside?.shown}
            {!changing && (
              <p className={styles.after} data-gives="1" data-fit>
                <span className={styles.label}>next</span> {view.next ? titled(view.next) : "nothing more"}
              </p>
            )}
          </>
        )}
      </div>
      <Figure view={view} unsure={unsure} />
    </Fitted>
  );
}
