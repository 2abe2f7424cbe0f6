"use client";
/** A screen that follows: it waits for a class in its room, then shows its part of it. It cannot change the class. */
import { useEffect, useRef, useState } from "react";
import type { Card } from "#lib/card/schema.ts";
import type { LineLink } from "#lib/client/line-link.ts";
import { floorView } from "#lib/floor/now.ts";
import { type Unconfirmed, unconfirmed } from "#lib/line/confirmed.ts";
import { VIEW_WORDS } from "#lib/line/line-words.ts";
import type { LineClass } from "#lib/line/messages.ts";
import type { FollowerView } from "#lib/protocol/line-wire.ts";
import type { KeptClass, Pairing } from "../_parts/kept.ts";
import { bothClocks } from "../_parts/use-class.ts";
import type { Settings } from "../_parts/use-settings.ts";
import type { ShelfState } from "../_parts/use-shelf.ts";
import styles from "./follow.module.css";
import { FollowFoot } from "./follow-foot.tsx";
import { FollowedClass } from "./followed-class.tsx";
import { noClassWords, waitingWords } from "./screens-words.ts";
import { useFollowedCard } from "./use-followed.ts";
import type { FloorLine } from "./use-line.ts";
import { useSecond } from "./use-second.ts";

interface Props {
  readonly line: FloorLine;
  readonly pairing: Pairing;
  readonly shelf: ShelfState;
  readonly settings: Settings;
  /** This screen leads from here on. */
  onTakeOn(card: Card, running: KeptClass): void;
  onLeave(): void;
}

export function FollowScreen({ line, pairing, shelf, settings, onTakeOn, onLeave }: Props) {
  const { state, link } = line;
  const { followed } = state;
  const found = useFollowedCard(shelf, pairing.publicKey, followed);
  const { view, choose } = useView(settings, link);
  const takeOn = () => {
    if (link && found && followed) onTakeOn(found.card, taken(link, followed, found.envelope));
  };
  const canLead = () =>
    link !== null &&
    found !== null &&
    followed !== null &&
    floorView(found.card, followed.log, link.classTime()).phase !== "done";
  useTakenOver(state, takeOn);
  useSecond();
  const lost = followed ? lostNow(line) : null;
  return (
    <div className={styles.follow} data-sure={lost === null}>
      {link && found && followed ? (
        <FollowedClass key={followed.session} card={found.card} cls={followed} {...{ link, view, settings, lost }} />
      ) : (
        <Waiting room={pairing.room.name} view={view} cls={followed} fetching={shelf.refreshing} />
      )}
      <FollowFoot line={line} view={view} canLead={canLead} onView={choose} onTakeOn={takeOn} onLeave={onLeave} />
    </div>
  );
}

/** The view that this screen shows; one chosen here stays on a device that only follows. */
function useView(settings: Settings, link: LineLink | null) {
  const [view, setView] = useState<FollowerView>(settings.screen === "lead" ? "demonstrator" : settings.screen);
  const choose = (is: FollowerView) => {
    setView(is);
    if (settings.screen !== "lead") settings.set({ screen: is });
    link?.setView(is);
  };
  return { view, choose };
}

/** Runs `takeOn` once this screen was made the leader. */
function useTakenOver({ contact, line, you }: FloorLine["state"], takeOn: () => void): void {
  const leads = contact === "on" && line?.leader !== undefined && line.leader !== null && line.leader.id === you;
  const latest = useRef(takeOn);
  latest.current = takeOn;
  useEffect(() => {
    if (leads) latest.current();
  }, [leads]);
}

/** Whether nobody confirms any more what this screen shows. */
function lostNow({ state: { heardAt, contact, line }, link }: FloorLine): Unconfirmed | null {
  const clocks = { wall: Date.now(), studioNow: link?.studioNow() ?? null };
  return unconfirmed({ heardAt, line, refused: contact === "refused" }, clocks);
}

/** The class as this device would have kept it if it had run here from the start. */
const taken = (link: LineLink, { log, session }: LineClass, envelope: KeptClass["envelope"]): KeptClass => ({
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
      <h1>{cls ? cls.title : noClassWords(room)}</h1>
      <p>{waitingWords(cls?.edition.number ?? null, fetching)}</p>
    </section>
  );
}
