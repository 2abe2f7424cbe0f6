"use client";
/** A room's own seconds for the actions of a set-up change, and what typical changes then cost. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { actionsWords } from "#app/_session/item-words.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { DEFAULT_ACTION_SECONDS } from "#lib/transitions/transitions.ts";
import { Problem } from "../../_parts/problem.tsx";
import { useSend } from "../../_parts/use-send.ts";
import { costOf, TIMED, type Timed, typicalChanges } from "./timing-words.ts";
import styles from "./timings.module.css";
import { draftOf, editOf, hearing, keeping, readTimings, type TimingsDraft } from "./timings-draft.ts";

interface TimingsFormProps {
  readonly roomId: string;
  readonly equipment: Equipment;
  /** How many rooms the studio has. */
  readonly rooms: number;
}

export function TimingsForm({ roomId, equipment, rooms }: TimingsFormProps) {
  const router = useRouter();
  const sending = useSend();
  const [edit, setEdit] = useState(() => editOf(equipment.actionSeconds));
  // Kept, taken from the classes, or kept in another window: the page was asked for again.
  if (edit.heard !== equipment.actionSeconds) setEdit(hearing(edit, equipment.actionSeconds));
  const { draft } = edit;
  const [everyRoom, setEveryRoom] = useState(false);
  const [done, setDone] = useState("");
  const { given, problems } = readTimings(draft);
  const wrong = Object.keys(problems).length > 0;
  const write = (next: TimingsDraft) => {
    setDone("");
    setEdit((now) => ({ ...now, draft: next }));
  };
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    if (wrong) return;
    const body = { actionSeconds: given, everyRoom };
    const kept = await sending.run<{ rooms: number }>("PUT", `/api/rooms/${roomId}/timings`, body);
    if (!kept) return;
    setEdit((now) => keeping(now, given));
    setDone(
      `Kept${kept.rooms > 1 ? ` for ${kept.rooms === 2 ? "both" : `all ${kept.rooms}`} rooms` : ""}. Open plans were timed again.`,
    );
    router.refresh();
  };
  return (
    <form className={styles.timings} onSubmit={keep} noValidate>
      <div className={styles.fields}>
        {TIMED.map(([timed, words]) => (
          <Seconds
            key={timed}
            timed={timed}
            words={words}
            text={draft[timed]}
            problem={problems[timed]}
            onChange={(text) => write({ ...draft, [timed]: text })}
          />
        ))}
        {rooms > 1 && (
          <label className="check">
            <input type="checkbox" checked={everyRoom} onChange={(event) => setEveryRoom(event.target.checked)} />
            Keep for {rooms === 2 ? "both" : `all ${rooms}`} rooms
          </label>
        )}
        <div className="acts">
          <button type="submit" className="button button-strong" aria-disabled={sending.busy} disabled={wrong}>
            Keep
          </button>
          <button type="button" className="button" onClick={() => write(draftOf(undefined))}>
            Empty all
          </button>
        </div>
        <Problem say={sending.problem} />
        <p role="status" className={done ? "done" : undefined}>
          {done}
        </p>
      </div>
      <Typical equipment={{ ...equipment, actionSeconds: given }} />
    </form>
  );
}

interface SecondsProps {
  readonly timed: Timed;
  readonly words: string;
  readonly text: string;
  readonly problem: string | undefined;
  readonly onChange: (text: string) => void;
}

function Seconds({ timed, words, text, problem, onChange }: SecondsProps) {
  const id = `seconds-${timed}`;
  return (
    <div className={styles.one}>
      <label htmlFor={id}>{words}</label>
      <span className="with-unit with-unit-number">
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          placeholder={`usual ${DEFAULT_ACTION_SECONDS[timed]}`}
          aria-invalid={problem !== undefined}
          aria-describedby={problem === undefined ? "own-seconds" : `${id}-say`}
          onChange={(event) => onChange(event.target.value)}
        />
        s
      </span>
      {problem && (
        <span id={`${id}-say`} className="problem" role="alert">
          {problem}
        </span>
      )}
    </div>
  );
}

function Typical({ equipment }: { readonly equipment: Equipment }) {
  const { actionSeconds: _own, ...usual } = equipment;
  return (
    <section className={styles.typical} aria-labelledby="typical">
      <h2 id="typical">What a typical change costs</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">change</th>
            <th scope="col" className="number">
              in this room
            </th>
            <th scope="col" className="number">
              usual
            </th>
          </tr>
        </thead>
        <tbody>
          {typicalChanges(equipment).map((change) => {
            const cost = costOf(change, equipment);
            return (
              <tr key={change.words}>
                <th scope="row">
                  {change.words}
                  <span className="quiet small">{actionsWords(cost.actions)}</span>
                </th>
                <td className="number">{cost.estimate} s</td>
                <td className="number">{costOf(change, usual).estimate} s</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
