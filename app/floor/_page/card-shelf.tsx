"use client";
/** The cards of the room: next class first, each verified again as it is shown. */
import { type ReactNode, useMemo, useState } from "react";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import { type Verified, verifyCard } from "#lib/card/verify-card.ts";
import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import { type WithdrawnCard, withdrawnOf } from "#lib/floor/keep-cards.ts";
import { clockTime } from "#lib/plan/format.ts";
import type { Pairing } from "../_parts/kept.ts";
import { type ClassLogs, logsWords } from "../_parts/use-class-logs.ts";
import type { ShelfState } from "../_parts/use-shelf.ts";
import { agoWords, slotWords } from "../_parts/when.ts";
import { type Worker, workerWords } from "../_parts/worker-state.ts";
import styles from "./card-shelf.module.css";

interface Props {
  readonly state: ShelfState;
  readonly pairing: Pairing;
  readonly worker: Worker;
  readonly logs: ClassLogs;
  onChoose(card: Card, envelope: CardEnvelope): void;
  /** Stands between the cards and the foot. */
  readonly children: ReactNode;
}
interface Row {
  readonly planId: string;
  readonly envelope: CardEnvelope;
  readonly verdict: Verified;
  readonly slot: string | undefined;
  readonly withdrawn: WithdrawnCard | undefined;
}

export function CardShelf({ state, pairing, worker, logs, onChoose, children }: Props) {
  const { shelf, refreshing, refused, notices } = state;
  const rows = useMemo(() => rowsOf(state, pairing.publicKey), [state, pairing.publicKey]);
  return (
    <div className={styles.shelf}>
      <header className="spread">
        <div>
          <h1>{pairing.room.name}</h1>
          <p className="quiet">
            {pairing.studio.name} · {pairing.device.name}
          </p>
        </div>
        <button
          type="button"
          className="button"
          onClick={() => Promise.all([state.refresh(), logs.send()])}
          disabled={refreshing}
        >
          {refreshing ? "Fetching" : "Fetch cards"}
        </button>
      </header>
      <div aria-live="polite" className={styles.notices}>
        {notices.map((notice) => (
          <p key={notice} className="notice">
            {notice}
          </p>
        ))}
        {refused.map(({ title, reason, earlierKept }) => (
          <p key={title + reason} className="problem">
            {title}: {reason} {earlierKept ? "The last good card is still here." : "It was not kept."}
          </p>
        ))}
      </div>
      {rows.length === 0 && <Empty refreshing={refreshing} room={pairing.room.name} />}
      <ul className={styles.cards}>
        {rows.map((row) => (
          <li key={row.planId}>
            <CardButton row={row} onChoose={onChoose} />
          </li>
        ))}
      </ul>
      {children}
      <footer className={styles.foot}>
        <p>
          {shelf.refreshedAt > 0
            ? `Cards fetched ${agoWords(shelf.refreshedAt, Date.now())}.`
            : "No cards fetched yet."}
        </p>
        <p>{workerWords[worker]}</p>
        <p role="status">{logsWords(logs)}</p>
        <Forget onForget={state.forget} />
      </footer>
    </div>
  );
}

function rowsOf(state: ShelfState, publicKey: string): Row[] {
  const { cards, nextSlots, withdrawn } = state.shelf;
  const rows = cards.map(({ planId, envelope }) => ({
    planId,
    envelope,
    verdict: verifyCard(envelope, publicKey, Date.now()),
    slot: nextSlots[planId],
    withdrawn: withdrawnOf(envelope.card.edition, withdrawn),
  }));
  const title = (row: Row) => row.envelope.card.edition.title;
  const key = (row: Row) => `${row.slot ?? "9999"} ${title(row)}`;
  return rows.sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

function Empty({ refreshing, room }: { refreshing: boolean; room: string }) {
  if (refreshing) return <p className={styles.empty}>Fetching the cards of {room}.</p>;
  return (
    <p className={styles.empty}>
      No signed class for {room} yet. When a lead signs a plan for this room, its card comes here with the next fetch.
    </p>
  );
}

function CardButton({ row, onChoose }: { row: Row; onChoose: Props["onChoose"] }) {
  const { verdict, envelope, slot, withdrawn } = row;
  const { edition, clock } = envelope.card;
  return (
    <button
      type="button"
      className={styles.card}
      disabled={!verdict.ok || withdrawn !== undefined}
      onClick={() => verdict.ok && onChoose(verdict.card, envelope)}
    >
      <span className={styles.title}>{edition.title}</span>
      <span className={styles.length}>{clockTime(clock.total)}</span>
      <span className={styles.about}>
        edition {edition.number} · {edition.shortName}
      </span>
      <span className={styles.when}>{slot ? slotWords(slot, Date.now()) : "no slot this month"}</span>
      <span className={styles.state}>{stateWords(row)}</span>
    </button>
  );
}

function stateWords({ verdict, withdrawn }: Row): string {
  if (withdrawn) return `${withdrawnWords(withdrawn)} It cannot be started.`;
  return verdict.ok ? "signature verified · kept on this device" : verdict.reason;
}

function Forget({ onForget }: { onForget(): Promise<void> }) {
  const [sure, setSure] = useState(false);
  if (!sure) {
    return (
      <button type="button" className="button button-quiet" onClick={() => setSure(true)}>
        Unpair this device
      </button>
    );
  }
  return (
    <p className={styles.sure}>
      Its cards and its pairing are let go; a new code is needed.
      <button type="button" className="button button-must" onClick={onForget}>
        Unpair
      </button>
      <button type="button" className="button" onClick={() => setSure(false)}>
        Keep
      </button>
    </p>
  );
}
