/**
 * Wall and demonstrator show one thing large: the move, its seconds in a column as wide as they are; when its end is near,
 * the plate of the change from below; in a change, that plate alone.
 */
import type { ReactNode } from "react";
import { secondsFigure } from "#lib/floor/time-words.ts";
import { ChangePlate, changedInto } from "../_change/change-plate.tsx";
import { PERHAPS_NEXT } from "../_change/change-words.ts";
import { ComingPlate } from "../_change/coming-plate.tsx";
import { titled } from "../_parts/coming.tsx";
import { FitText } from "../_parts/fit-text.tsx";
import { Fitted } from "../_parts/fitted.tsx";
import { nowWords } from "../_parts/floor-words.ts";
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

/** Font sizes of a name beside a larger one, CSS px. */
const ENDING_SIZES = [88, 76, 66, 56, 48, 42, 36, 30, 26, 22, 18];

export function Board(props: Props) {
  const { view, card, distanceM, unsure } = props;
  const { equipment } = card.plan;
  const into = changedInto(view);
  if (into) return <ChangePlate view={view} item={into} plan={card.plan} {...{ distanceM, unsure }} />;
  if (!view.headsUp || !view.next?.nowOn) return <Present {...props} />;
  return (
    <>
      <Ending {...props} />
      <ComingPlate item={view.next} label={unsure ? PERHAPS_NEXT : "coming up"} {...{ equipment, distanceM, unsure }} />
    </>
  );
}

/** The end of the move is near: its name gives way to what comes. */
function Ending({ view, unsure }: Props) {
  const name = nowWords(view);
  return (
    <section className={styles.ending} aria-label="Now">
      <FitText sizes={ENDING_SIZES} text={name}>
        <h1>{name}</h1>
      </FitText>
      <Figure view={view} unsure={unsure} />
    </section>
  );
}

/** The move and how it is set up. */
function Present({ view, distanceM, unsure, kind, standing, aside }: Props) {
  const figure = secondsFigure(view.secondsLeft);
  const [high, wide] = FIGURE_SHARE[kind];
  const shown = [
    view.phase,
    nowWords(view),
    view.item?.side,
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
      gives={["what comes next"]}
      sizes={(width, height) => ({
        main: Math.min(kind === "wall" ? 300 : 200, height * 0.34),
        figure: Math.min(height * high, (width * wide) / (figure.length > 2 ? 1.9 : 1)),
      })}
    >
      <div className={styles.words}>
        <h1 className={styles.name} data-fit>
          {view.item ? titled(view.item) : nowWords(view)}
        </h1>
        {standing}
        {aside?.shown}
        <p className={styles.after} data-gives="1" data-fit>
          <span className={styles.label}>next</span> {view.next ? titled(view.next) : "nothing more"}
        </p>
      </div>
      <Figure view={view} unsure={unsure} />
    </Fitted>
  );
}
