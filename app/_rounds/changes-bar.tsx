"use client";
/** Over the rail: what the plates are compared with, how many changed and are read, and the way from one to the next. */
import { useId } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import { type ChangesNow, useChangesShown } from "#app/_session/changes-shown.ts";
import { PlanButton, usePageActs } from "#app/_session/page-acts.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { momentWords } from "#lib/formats/dates.ts";
import styles from "./rounds.module.css";
import { CHANGES, changedCountWords, pointWords, removedWords } from "./rounds-words.ts";

export function ChangesBar({ session }: { readonly session: PlanSession }) {
  const f = useFormats();
  const now = useChangesShown(session.changes);
  const { selectedId } = useSnapshot(session); // which plate is chosen decides what can be marked
  const { rounds, point, choose, order, marks } = now;
  const isRead = selectedId !== null && marks.get(selectedId)?.read === true;
  const id = useId();
  if (!rounds || rounds.points.length === 0) return null;
  const points = rounds.points.toReversed();
  return (
    <div className={styles.bar}>
      <label htmlFor={id}>{CHANGES.label}</label>
      <select id={id} value={point ?? ""} onChange={(event) => choose(event.target.value || null)}>
        <option value="">{CHANGES.nothing}</option>
        {points.map((one) => (
          <option key={one.id} value={one.id}>
            {pointWords(one, session.me.id)}, {momentWords(one.at, f)}
          </option>
        ))}
      </select>
      {point !== null && <Count now={now} />}
      {point !== null && order.length > 0 && (
        <>
          <PlanButton command="next-changed" place="plan" />
          <PlanButton command="mark-read" place="plan">
            {isRead ? CHANGES.unread : CHANGES.read}
          </PlanButton>
        </>
      )}
      {point !== null && <AsList />}
    </div>
  );
}

function Count({ now: { before, order, marks, plates, setRead } }: { readonly now: ChangesNow }) {
  const read = setRead ? order.filter((id) => marks.get(id)?.read === true).length : null;
  const removed = plates.size - order.length;
  return (
    <p role="status" className={styles.count}>
      {before === null ? CHANGES.loading : changedCountWords(order.length, read)}
      {before !== null && removed > 0 && `, ${removedWords(removed)}`}
      {order.length > 0 && <span className={styles.keysHint}>{keysHint(order.length, read)}</span>}
    </p>
  );
}

function keysHint(changed: number, read: number | null): string {
  if (read === null) return CHANGES.keys;
  return read === changed ? CHANGES.keysAllRead : CHANGES.keysToRead;
}

/** In the header, which stays in sight: how much a lead has read. */
export function ReadCount({ session }: { readonly session: PlanSession }) {
  const { order, marks, setRead } = useChangesShown(session.changes);
  const { state } = useSnapshot(session);
  if (!setRead || order.length === 0 || state.state !== "handed-in") return null;
  const read = order.filter((id) => marks.get(id)?.read === true).length;
  return <p className={styles.inHeader}>{changedCountWords(order.length, read)}</p>;
}

function AsList() {
  const { run } = usePageActs();
  return (
    <button type="button" className="act" onClick={run.rounds}>
      {CHANGES.asList}
    </button>
  );
}
