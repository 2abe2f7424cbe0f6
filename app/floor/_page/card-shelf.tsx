"use client";
import { type ReactNode, useMemo, useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import { useNewerKnown } from "#app/_parts/use-newer-known.ts";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import { type Verified, verifyCard } from "#lib/card/verify-card.ts";
import { type WithdrawnCard, withdrawnOf } from "#lib/floor/keep-cards.ts";
import { timesIn } from "#lib/formats/canonical-times.ts";
/** The editions of the room: the next class first, each card verified again when it is shown. */
import type { Formats } from "#lib/formats/formats.ts";
import { clockTime } from "#lib/plan/format.ts";
import { logsWords, type WorkerState, workerWords } from "../_parts/floor-words.ts";
import type { Pairing } from "../_parts/kept.ts";
import { slotWords } from "../_parts/time-words.ts";
import type { ClassLogs } from "../_parts/use-class-logs.ts";
import type { ShelfState } from "../_parts/use-shelf.ts";
import styles from "./card-shelf.module.css";
import {
  cannotStartWords,
  emptyWords,
  fetchedWords,
  NEWER_HERE,
  OPEN_AGAIN,
  refusedWords,
  UNPAIR_ASKS,
  VERIFIED,
} from "./page-words.ts";

interface Props {
  readonly state: ShelfState;
  readonly pairing: Pairing;
  readonly worker: WorkerState;
  readonly logs: ClassLogs;
  onChoose(card: Card, envelope: CardEnvelope): void;
  /** Shown between the editions and the foot. */
  readonly children: ReactNode;
}
interface Row {
  readonly planId: string;
  readonly envelope: CardEnvelope;
  readonly verdict: Verified;
  readonly slot: string | undefined;
  /** What changed of that slot since the month was signed off. */
  readonly marks: readonly string[];
  readonly withdrawn: WithdrawnCard | undefined;
}

export function CardShelf({ state, pairing, worker, logs, onChoose, children }: Props) {
  const rows = useMemo(() => rowsOf(state, pairing.publicKey), [state, pairing.publicKey]);
  const { shelf, refreshing } = state;
  return (
    <div className={styles.shelf}>
      <Head state={state} pairing={pairing} logs={logs} />
      <NewerHere />
      <Notices state={state} />
      {rows.length === 0 && !shelf.dropped?.length && (
        <p className={styles.empty}>{emptyWords(pairing.room.name, refreshing)}</p>
      )}
      <ul className={styles.cards}>
        {rows.map((row) => (
          <li key={row.planId}>
            <CardButton row={row} onChoose={onChoose} />
          </li>
        ))}
        <Dropped shelf={shelf} />
      </ul>
      {children}
      <footer className={styles.foot}>
        <p>{fetchedWords(shelf.refreshedAt, Date.now())}</p>
        <p>{workerWords[worker]}</p>
        <p role="status">{logsWords(logs)}</p>
        <Forget onForget={state.forget} />
      </footer>
    </div>
  );
}

function Head({ state, pairing, logs }: Pick<Props, "state" | "pairing" | "logs">) {
  return (
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
        disabled={state.refreshing}
      >
        {state.refreshing ? "Fetching" : "Fetch editions"}
      </button>
    </header>
  );
}

/** Here, where no class runs: a page goes on as it is until somebody opens it again. */
function NewerHere() {
  const known = useNewerKnown();
  return (
    <div aria-live="polite">
      {known && (
        <p className="notice spread">
          {NEWER_HERE}
          <button type="button" className="button" onClick={() => location.reload()}>
            {OPEN_AGAIN}
          </button>
        </p>
      )}
    </div>
  );
}

/** What went wrong with the last fetch. */
function Notices({ state: { notices, refused } }: Pick<Props, "state">) {
  return (
    <div aria-live="polite" className={styles.notices}>
      {notices.map((notice) => (
        <p key={notice} className="notice">
          {notice}
        </p>
      ))}
      {refused.map(({ title, reason, earlierKept }) => (
        <p key={title + reason} className="problem">
          {refusedWords(title, reason, earlierKept)}
        </p>
      ))}
    </div>
  );
}

function rowsOf(state: ShelfState, publicKey: string): Row[] {
  const { cards, nextSlots, slotMarks, withdrawn } = state.shelf;
  const rows = cards.map(({ planId, envelope }) => ({
    planId,
    envelope,
    verdict: verifyCard(envelope, publicKey, Date.now()),
    slot: nextSlots[planId],
    marks: slotMarks?.[planId] ?? [],
    withdrawn: withdrawnOf(envelope.card.edition, withdrawn),
  }));
  const title = (row: Row) => row.envelope.card.edition.title;
  const key = (row: Row) => `${row.slot ?? "9999"} ${title(row)}`;
  return rows.sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

function CardButton({ row, onChoose }: { row: Row; onChoose: Props["onChoose"] }) {
  const f = useFormats();
  const { verdict, envelope, slot, marks, withdrawn } = row;
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
      <span className={styles.when}>
        {[slot ? slotWords(slot, Date.now(), f) : "no slot this month", ...marks.map((mark) => timesIn(mark, f))].join(
          " · ",
        )}
      </span>
      <span className={styles.state}>{stateWords(row, f)}</span>
    </button>
  );
}

/** Editions that were withdrawn and whose cards are deleted: which, by whom and why. */
function Dropped({ shelf: { dropped = [], withdrawn } }: { readonly shelf: ShelfState["shelf"] }) {
  const f = useFormats();
  return dropped.map((one) => {
    const out = withdrawnOf(one, withdrawn);
    return (
      out && (
        <li key={`${one.planId} ${one.number}`}>
          <button type="button" className={styles.card} disabled>
            <span className={styles.title}>{one.title}</span>
            <span className={styles.about}>edition {one.number}</span>
            <span className={styles.state}>{cannotStartWords(out, f)}</span>
          </button>
        </li>
      )
    );
  });
}

function stateWords({ verdict, withdrawn }: Row, f: Formats): string {
  if (withdrawn) return cannotStartWords(withdrawn, f);
  return verdict.ok ? VERIFIED : verdict.reason;
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
      {UNPAIR_ASKS}
      <button type="button" className="button button-must" onClick={onForget}>
        Unpair
      </button>
      <button type="button" className="button" onClick={() => setSure(false)}>
        Keep
      </button>
    </p>
  );
}
