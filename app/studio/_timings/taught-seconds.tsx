"use client";
/** A room's seconds as its classes tell them: now, from the classes, how sure. A manager takes the chosen ones or none. */
import { useRouter } from "next/navigation";
import { useState } from "react";
import { Moment } from "#app/_parts/moment.tsx";
import { Problem } from "#app/_parts/problem.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import { percent, plainNumber, plural } from "#lib/plan/format.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { PRIOR_SHARE, type StudioSecond } from "#lib/timings/studio-seconds.ts";
import type { TaughtTimings } from "#server/rooms/taught-timings.ts";
import styles from "./taught.module.css";
import { isMostlyUsual, rangeWords, sureWords, TIMED, type Timed } from "./timing-words.ts";

interface Props {
  readonly roomId: string;
  /** The room's own seconds as they are now. */
  readonly own: NonNullable<Equipment["actionSeconds"]>;
  readonly taught: TaughtTimings;
}

const wordsOf = new Map<Timed, string>(TIMED);

export function TaughtSeconds({ roomId, own, taught }: Props) {
  const told = TIMED.flatMap(([timed]) => taught.rows.filter((row) => row.action === timed && row.seenIn > 0));
  const silent = taught.rows.filter((row) => row.seenIn === 0);
  return (
    <section aria-labelledby="from-classes" className={styles.taught}>
      <h2 id="from-classes">From your classes</h2>
      <p>{gist(taught)}</p>
      {told.length > 0 && <Choice roomId={roomId} own={own} rows={told} />}
      {told.length > 0 && silent.length > 0 && (
        <p className="quiet small">
          No change tells of: {silent.map((row) => (wordsOf.get(row.action) ?? "").toLowerCase()).join("; ")}.
        </p>
      )}
      {taught.taken && (
        <p className="quiet small">
          Last taken by {taught.taken.byName}, <Moment at={taught.taken.at} />:{" "}
          {TIMED.filter(([timed]) => taught.taken?.seconds[timed] !== undefined)
            .map(([timed, words]) => `${words.toLowerCase()} ${plainNumber(taught.taken?.seconds[timed] ?? 0)} s`)
            .join("; ")}
          .
        </p>
      )}
      <p className="quiet small">
        A class that runs by its clock says nothing of its changes. One counts where the coach passed on early because
        people were ready, held it because they were not, or held the move as it had just begun. What differs from the
        usual by far more than a change can is left out
        {taught.leftOut > 0 && ` (${taught.leftOut} here)`}. The numbers are pulled towards the usual seconds, which
        count as known to within {percent(PRIOR_SHARE)}, so that a few changes move them little. A coach who holds where
        people are slow and never goes on where they are quick makes them too long.
      </p>
    </section>
  );
}

function gist({ classes, changes, offUsual, offOwn }: TaughtTimings): string {
  if (classes === 0) return "No class has been told yet. A cue device sends what happened when it is back from one.";
  const of = `${plural(classes, "class", "classes")} taught in this room`;
  if (changes === 0) return `${of}, and none of them tells how long a change took: they ran by their clocks.`;
  const off = (seconds: number) => `${plainNumber(Math.round(seconds * 10) / 10)} s`;
  return `${of} tell of ${plural(changes, "change")}. They differ from the usual seconds by about ${off(offUsual)} each, from the seconds below by ${off(offOwn)}.`;
}

interface ChoiceProps {
  readonly roomId: string;
  readonly own: Props["own"];
  readonly rows: readonly StudioSecond[];
}

function Choice({ roomId, own, rows }: ChoiceProps) {
  const router = useRouter();
  const sending = useSend();
  const nowOf = (row: StudioSecond): number => own[row.action] ?? row.usual;
  const open = rows.filter((row) => nowOf(row) !== row.seconds);
  const [unchosen, setUnchosen] = useState<ReadonlySet<Timed>>(
    () => new Set(rows.filter(isMostlyUsual).map((r) => r.action)),
  );
  const [done, setDone] = useState("");
  const chosen = open.filter((row) => !unchosen.has(row.action));
  const choose = (timed: Timed, on: boolean) => {
    const next = new Set(unchosen);
    if (on) next.delete(timed);
    else next.add(timed);
    setUnchosen(next);
    setDone("");
  };
  const take = async () => {
    const body = { take: Object.fromEntries(chosen.map((row) => [row.action, row.seconds])) };
    const taken = await sending.run("POST", `/api/rooms/${roomId}/timings/taught`, body);
    if (taken) setDone(`${plural(chosen.length, "number")} taken. Open plans were timed again.`);
    router.refresh(); // refused, too: what is shown is then old
  };
  return (
    <>
      <div className="table-scroll">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">take</th>
              <th scope="col">part of a change</th>
              <th scope="col" className="number">
                now
              </th>
              <th scope="col" className="number">
                from the classes
              </th>
              <th scope="col" className={styles.within}>
                19 times in 20 within
              </th>
              <th scope="col">how sure</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Row key={row.action} row={row} now={nowOf(row)} on={chosen.includes(row)} onChoose={choose} />
            ))}
          </tbody>
        </table>
      </div>
      <p className="acts">
        <button
          type="button"
          className="button button-strong"
          disabled={sending.busy || chosen.length === 0}
          onClick={take}
        >
          {chosen.length === 0 ? "Nothing chosen" : `Take ${plural(chosen.length, "number")} for this room`}
        </button>
        <span role="status" className={done ? "done" : undefined}>
          {done}
        </span>
      </p>
      <Problem say={sending.problem} />
    </>
  );
}

interface RowProps {
  readonly row: StudioSecond;
  readonly now: number;
  readonly on: boolean;
  onChoose(timed: Timed, on: boolean): void;
}

function Row({ row, now, on, onChoose }: RowProps) {
  const words = wordsOf.get(row.action) ?? row.action;
  const same = now === row.seconds;
  return (
    <tr data-unsure={isMostlyUsual(row) || undefined}>
      <td>
        {same ? (
          <span className="quiet small">as now</span>
        ) : (
          <label className={styles.take}>
            <input type="checkbox" checked={on} onChange={(event) => onChoose(row.action, event.target.checked)} />
            <span className="visually-hidden">Take: {words}</span>
          </label>
        )}
      </td>
      <th scope="row">{words}</th>
      <td className="number" data-label="now">
        {plainNumber(now)} s
      </td>
      <td className="number" data-label="from classes">
        <strong>{plainNumber(row.seconds)} s</strong>
      </td>
      <td className={styles.within} data-label="within">
        {rangeWords(row)}
      </td>
      <td className={styles.sure}>{sureWords(row)}</td>
    </tr>
  );
}
