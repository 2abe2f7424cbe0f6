"use client";
/** A room's seconds as its classes show them: now, from the classes, how sure. A manager takes those that are ticked. */
import { useRouter } from "next/navigation";
import { useState } from "react";
import { LocalTime } from "#app/_parts/local-time.tsx";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import { percent } from "#lib/formats/percent.ts";
import { plainNumber, plural } from "#lib/plan/format.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { PRIOR_SHARE, type StudioSecond } from "#lib/timings/studio-seconds.ts";
import type { TaughtTimings } from "#server/rooms/taught-timings.ts";
import styles from "./taught.module.css";
import { isMostlyUsual, likelyRangeWords, sureWords, TIMED_WORDS, type Timed } from "./timing-words.ts";

interface Props {
  readonly roomId: string;
  /** The room's own seconds as they are now. */
  readonly own: NonNullable<Equipment["actionSeconds"]>;
  readonly taught: TaughtTimings;
}

const wordsOf = new Map<Timed, string>(TIMED_WORDS);

export function TaughtSeconds({ roomId, own, taught }: Props) {
  const timed = TIMED_WORDS.flatMap(([of]) => taught.rows.filter((row) => row.action === of && row.seenIn > 0));
  const untimed = taught.rows.filter((row) => row.seenIn === 0);
  return (
    <section aria-labelledby="from-classes" className={styles.taught}>
      <h2 id="from-classes">From your classes</h2>
      <p>{gist(taught)}</p>
      {timed.length > 0 && <Choose roomId={roomId} own={own} rows={timed} />}
      {timed.length > 0 && untimed.length > 0 && (
        <p className="quiet small">Not timed in any class: {untimed.map((row) => lower(row.action)).join("; ")}.</p>
      )}
      {taught.taken && <LastTaken taken={taught.taken} />}
      <HowItIsWorkedOut leftOut={taught.leftOut} />
    </section>
  );
}

const lower = (timed: Timed): string => (wordsOf.get(timed) ?? "").toLowerCase();

function LastTaken({ taken }: { readonly taken: NonNullable<TaughtTimings["taken"]> }) {
  const numbers = TIMED_WORDS.flatMap(([timed]) => {
    const seconds = taken.seconds[timed];
    return seconds === undefined ? [] : [`${lower(timed)} ${plainNumber(seconds)} s`];
  });
  return (
    <p className="quiet small">
      Last taken by {taken.byName}, <LocalTime at={taken.at} />: {numbers.join("; ")}.
    </p>
  );
}

function HowItIsWorkedOut({ leftOut }: { readonly leftOut: number }) {
  return (
    <details>
      <summary>How the classes are read</summary>
      <p className="quiet small">
        A class that simply follows its clock does not show how long a change took. A change counts where the coach went
        on early because people were ready, held it because they were not, or held the move just after it began. Changes
        far from the usual seconds are left out{leftOut > 0 && ` (${leftOut} here)`}. A class waits for its slowest, so
        its seconds are divided by how much longer that person takes: all seconds here are one person’s. The usual
        seconds count as known to within {percent(PRIOR_SHARE)}, so a few changes move the numbers only a little. A
        coach who holds slow changes but never goes on early from quick ones makes the numbers too long.
      </p>
    </details>
  );
}

function gist({ classes, changes, offUsual, offOwn }: TaughtTimings): string {
  if (classes === 0) return "No class log has arrived yet. A cue device sends one after each class, once it is online.";
  const of = `${plural(classes, "class", "classes")} taught in this room`;
  if (changes === 0) return `${of}. None shows how long a change took, because the clock was followed throughout.`;
  const off = (seconds: number) => `${plainNumber(Math.round(seconds * 10) / 10)} s`;
  return `${of} show ${plural(changes, "change")}. On average they differ from the usual seconds by about ${off(offUsual)}, and from the seconds below by ${off(offOwn)}.`;
}

interface ChooseProps {
  readonly roomId: string;
  readonly own: Props["own"];
  readonly rows: readonly StudioSecond[];
}

function Choose({ roomId, own, rows }: ChooseProps) {
  const choice = useChoice(rows, own);
  const { chosen, nowOf } = choice;
  const router = useRouter();
  const sending = useSend();
  const take = async () => {
    const body = { take: Object.fromEntries(chosen.map((row) => [row.action, row.seconds])) };
    const taken = await sending.run("POST", `/api/rooms/${roomId}/timings/taught`, body);
    if (taken) choice.setDone(`${plural(chosen.length, "number")} taken. Open plans were timed again.`);
    router.refresh(); // refused, too: what is shown is then old
  };
  return (
    <>
      <div className="table-scroll">
        <table className={styles.table}>
          <Head />
          <tbody>
            {rows.map((row) => (
              <Row key={row.action} row={row} now={nowOf(row)} on={chosen.includes(row)} onChoose={choice.choose} />
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
          {chosen.length === 0 ? "Nothing ticked" : `Take ${plural(chosen.length, "number")} for this room`}
        </button>
        <span role="status" className={choice.done ? "done" : undefined}>
          {choice.done}
        </span>
      </p>
      <ProblemLine say={sending.problem} />
    </>
  );
}

/** Which numbers are ticked: at first those that rest on the classes more than on the usual seconds. */
function useChoice(rows: readonly StudioSecond[], own: Props["own"]) {
  const [done, setDone] = useState("");
  const [unchosen, setUnchosen] = useState<ReadonlySet<Timed>>(
    () => new Set(rows.filter(isMostlyUsual).map((row) => row.action)),
  );
  const nowOf = (row: StudioSecond): number => own[row.action] ?? row.usual;
  const chosen = rows.filter((row) => nowOf(row) !== row.seconds && !unchosen.has(row.action));
  const choose = (timed: Timed, on: boolean) => {
    const next = new Set(unchosen);
    if (on) next.delete(timed);
    else next.add(timed);
    setUnchosen(next);
    setDone("");
  };
  return { chosen, nowOf, choose, done, setDone };
}

function Head() {
  return (
    <thead>
      <tr>
        <th scope="col">Take</th>
        <th scope="col">Part of a change</th>
        <th scope="col" className="number">
          Now
        </th>
        <th scope="col" className="number">
          From your classes
        </th>
        <th scope="col" className={styles.within}>
          19 times out of 20 within
        </th>
        <th scope="col">How sure</th>
      </tr>
    </thead>
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
        {likelyRangeWords(row)}
      </td>
      <td className={styles.sure}>{sureWords(row)}</td>
    </tr>
  );
}
