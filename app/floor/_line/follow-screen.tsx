"use client";
/** A screen that follows: waits for a class to be led in its room, then shows its part of it. It drives nothing. */
import { useEffect, useRef, useState } from "react";
import type { Card } from "#lib/card/schema.ts";
import type { LineLink } from "#lib/client/line-link.ts";
import { floorView } from "#lib/floor/now.ts";
import { unconfirmed } from "#lib/line/confirmed.ts";
import { VIEW_WORDS } from "#lib/line/line-words.ts";
import type { LineClass } from "#lib/line/messages.ts";
import type { FollowerView } from "#lib/protocol/line-wire.ts";
import type { Pairing, Running } from "../_parts/kept.ts";
import { bothClocks } from "../_parts/use-class.ts";
import type { Settings } from "../_parts/use-settings.ts";
import type { ShelfState } from "../_parts/use-shelf.ts";
import styles from "./follow.module.css";
import { FollowFoot } from "./follow-foot.tsx";
import { FollowedClass } from "./followed-class.tsx";
import { useFollowedCard } from "./use-followed.ts";
import type { FloorLine } from "./use-line.ts";
import { useSecond } from "./use-second.ts";

interface Props {
  readonly line: FloorLine;
  readonly pairing: Pairing;
  readonly shelf: ShelfState;
  readonly settings: Settings;
  /** This screen leads from here: the class goes on on it. */
  onTakeOn(card: Card, running: Running): void;
  onLeave(): void;
}

export function FollowScreen({ line, pairing, shelf, settings, onTakeOn, onLeave }: Props) {
  const { state, link } = line;
  const { followed } = state;
  const found = useFollowedCard(shelf, pairing.publicKey, followed);
  const [view, setView] = useState<FollowerView>(settings.screen === "lead" ? "demonstrator" : settings.screen);
  const choose = (is: FollowerView) => {
    setView(is);
    if (settings.screen !== "lead") settings.set({ screen: is });
    link?.setView(is);
  };
  const takeOn = () => {
    if (link && found && followed) onTakeOn(found.card, taken(link, followed, found.envelope));
  };
  const canLead = () =>
    link !== null &&
    found !== null &&
    followed !== null &&
    floorView(found.card, followed.log, link.classTime()).phase !== "done";
  const leads = state.contact === "on" && state.line?.leader !== null && state.line?.leader.id === state.you;
  const granted = useRef(takeOn);
  granted.current = takeOn;
  useEffect(() => {
    if (leads) granted.current();
  }, [leads]);
  useSecond();
  const { heardAt, contact, line: is } = state;
  const clocks = { wall: Date.now(), studioNow: link?.studioNow() ?? null };
  const lost = followed ? unconfirmed({ heardAt, line: is, refused: contact === "refused" }, clocks) : null;
  return (
    <div className={styles.follow} data-sure={lost === null}>
      {link && found && followed ? (
        <FollowedClass
          key={followed.session}
          card={found.card}
          cls={followed}
          link={link}
          view={view}
          settings={settings}
          lost={lost}
        />
      ) : (
        <Waiting room={pairing.room.name} view={view} cls={followed} fetching={shelf.refreshing} />
      )}
      <FollowFoot line={line} view={view} canLead={canLead} onView={choose} onTakeOn={takeOn} onLeave={onLeave} />
    </div>
  );
}

/** The class as this device would have kept it, had it run here from the start. */
const taken = (link: LineLink, { log, session }: LineClass, envelope: Running["envelope"]): Running => ({
  envelope,
  log: link.toLocal(log),
  anchor: bothClocks(),
  sessionId: session,
});

interface WaitingProps {
  readonly room: string;
  readonly view: FollowerView;
  readonly cls: LineClass | null;
  readonly fetching: boolean;
}

function Waiting({ room, view, cls, fetching }: WaitingProps) {
  return (
    <section className={styles.waiting} aria-label={VIEW_WORDS[view].name}>
      <h1>{cls ? cls.title : `${room}: no class is led now`}</h1>
      <p>{waitingWords(cls, fetching)}</p>
    </section>
  );
}

function waitingWords(cls: LineClass | null, fetching: boolean): string {
  if (!cls) return "This screen follows by itself as soon as a class begins on the coach's device.";
  if (fetching) return "The card of this class is being fetched.";
  return `This screen has no card of edition ${cls.edition.number}, so it cannot show it. Fetch the cards on the coach's device and on this one: a room runs the newest edition.`;
}
