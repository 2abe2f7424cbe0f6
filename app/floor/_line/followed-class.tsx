"use client";
/** A class that another screen leads, in this screen's view. */
import type { Card } from "#lib/card/schema.ts";
import type { LineLink } from "#lib/client/line-link.ts";
import { LATE_SECONDS, latenessWords, minutesSeconds } from "#lib/floor/time-words.ts";
import { type Unconfirmed, unconfirmedWords } from "#lib/line/confirmed.ts";
import type { LineClass } from "#lib/line/messages.ts";
import type { FollowerView } from "#lib/protocol/line-wire.ts";
import { useAwake } from "../_parts/awake.ts";
import { useCalls } from "../_parts/calls.ts";
import { nowWords } from "../_parts/floor-words.ts";
import type { Settings } from "../_parts/use-settings.ts";
import { CrewView } from "./crew-view.tsx";
import { DemonstratorView } from "./demonstrator-view.tsx";
import styles from "./follow.module.css";
import { LOOK_AT_COACH, NOT_CONFIRMED } from "./screens-words.ts";
import { useFollowed } from "./use-followed.ts";
import type { ViewProps } from "./view-props.ts";
import { WallView } from "./wall-view.tsx";

const VIEWS: Readonly<Record<FollowerView, (props: ViewProps) => React.ReactNode>> = {
  wall: WallView,
  demonstrator: DemonstratorView,
  crew: CrewView,
};

interface Props {
  readonly card: Card;
  readonly cls: LineClass;
  readonly link: LineLink;
  readonly view: FollowerView;
  readonly settings: Settings;
  readonly lost: Unconfirmed | null;
}

export function FollowedClass({ card, cls, link, view, settings, lost }: Props) {
  const followed = useFollowed(card, link, cls);
  const is = followed.view;
  useAwake();
  useCalls(is, settings);
  const View = VIEWS[view];
  return (
    <>
      <header className={styles.top}>
        <span>
          {card.edition.title} · edition {card.edition.number}
        </span>
        <span className={styles.figures} data-late={is.lateBy >= LATE_SECONDS}>
          {is.phase === "done" ? "done" : `${minutesSeconds(is.left)} left · ${latenessWords(is.lateBy)}`}
        </span>
      </header>
      {lost && is.phase !== "done" && (
        <p className={styles.unsure} role="alert">
          <strong>{LOOK_AT_COACH}</strong> {NOT_CONFIRMED} <span aria-live="off">{unconfirmedWords(lost)}</span>
        </p>
      )}
      {is.phase === "done" ? (
        <section className={styles.waiting} data-ended>
          <h1>The class is done</h1>
        </section>
      ) : (
        <View card={card} distanceM={settings.distanceM} unsure={lost !== null} {...followed} />
      )}
      <p className="visually-hidden" aria-live="polite">
        {nowWords(is)}
        {is.held ? ", held" : ""}
      </p>
    </>
  );
}
