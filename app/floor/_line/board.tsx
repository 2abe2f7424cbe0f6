/**
 * Wall and demonstrator show one thing large: the move; when its end is near, the next one; in a change, what to do. The
 * seconds have a column of their own, as wide as they are.
 */
import type { ReactNode } from "react";
import { secondsFigure } from "#lib/floor/time-words.ts";
import { titled } from "../_parts/coming.tsx";
import { Fitted } from "../_parts/fitted.tsx";
import { nowWords } from "../_parts/floor-words.ts";
import { Acts } from "./acts.tsx";
import { Figure } from "./figure.tsx";
import styles from "./follow.module.css";
import type { ViewProps } from "./view-props.ts";

interface Props extends ViewProps {
  readonly kind: "wall" | "demonstrator";
  /** How the move is set up, shown under its name. */
  readonly standing: ReactNode;
  /** What else is shown at this moment, and its words. */
  readonly aside?: { readonly words: string; readonly shown: ReactNode };
}

/** Shares of the screen's height and width that the seconds take at most. */
const FIGURE_SHARE = { wall: [0.82, 0.36], demonstrator: [0.4, 0.22] } as const;

export function Board(props: Props) {
  const { view, distanceM, unsure, kind, aside } = props;
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
      <div className={styles.words}>{near ? <Near {...props} /> : <Present {...props} changing={changing} />}</div>
      <Figure view={view} unsure={unsure} />
    </Fitted>
  );
}

/** The end of the move is near: its name small, and what comes large. */
function Near({ view, card, unsure }: Props) {
  if (!view.next) return null;
  return (
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
      <Acts item={view.next} equipment={card.plan.equipment} large={false} unsure={unsure} />
    </>
  );
}

/** The move and how it is set up; in a change, what to do. */
function Present({ view, card, unsure, standing, aside, changing }: Props & { readonly changing: boolean }) {
  return (
    <>
      <h1 className={changing ? styles.lesser : styles.name} data-fit>
        {changing && <span className={styles.tag}>{unsure ? "perhaps change to" : "change to"}</span>}{" "}
        {view.item ? titled(view.item) : nowWords(view)}
      </h1>
      {changing && view.item ? (
        <Acts item={view.item} equipment={card.plan.equipment} large unsure={unsure} />
      ) : (
        standing
      )}
      {aside?.shown}
      {!changing && (
        <p className={styles.after} data-gives="1" data-fit>
          <span className={styles.label}>next</span> {view.next ? titled(view.next) : "nothing more"}
        </p>
      )}
    </>
  );
}
