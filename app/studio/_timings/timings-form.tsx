"use client";
/** A room's own seconds for each part of a change, and how long typical changes then take. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import * as z from "zod/mini";
import { actionsWords } from "#app/_session/item-words.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { DEFAULT_ACTION_SECONDS } from "#lib/transitions/transitions.ts";
import { ProblemLine } from "../../_parts/problem-line.tsx";
import { SendButton } from "../../_parts/send-button.tsx";
import { useSend } from "../../_parts/use-send.ts";
import { changeCost, TIMED_WORDS, type Timed, typicalChanges } from "./timing-words.ts";
import styles from "./timings.module.css";
import { editOf, hearing, keeping, readTimings, type TimingsDraft, timingsDraftOf } from "./timings-draft.ts";

interface TimingsFormProps {
  readonly roomId: string;
  readonly equipment: Equipment;
  /** How many rooms the studio has. */
  readonly rooms: number;
}

export function TimingsForm({ roomId, equipment, rooms }: TimingsFormProps) {
  const form = useTimings(roomId, equipment);
  const { draft, given, problems, wrong, write } = form;
  const [everyRoom, setEveryRoom] = useState(false);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void form.save(everyRoom);
  };
  return (
    <form className={styles.timings} onSubmit={submit} noValidate>
      <div className={styles.fields}>
        <SecondsFields draft={draft} problems={problems} onChange={write} />
        {rooms > 1 && (
          <label className="check">
            <input type="checkbox" checked={everyRoom} onChange={(event) => setEveryRoom(event.target.checked)} />
            Save for {rooms === 2 ? "both" : `all ${rooms}`} rooms
          </label>
        )}
        <div className="acts">
          <SendButton busy={form.busy} doing="Saving…" disabled={wrong}>
            Save
          </SendButton>
          <button type="button" className="button" onClick={() => write(timingsDraftOf(undefined))}>
            Clear all
          </button>
        </div>
        <ProblemLine say={form.problem} />
        <p role="status" className={form.done ? "done" : undefined}>
          {form.done}
        </p>
      </div>
      <Typical equipment={{ ...equipment, actionSeconds: given }} />
    </form>
  );
}

interface SecondsFieldsProps {
  readonly draft: TimingsDraft;
  readonly problems: Readonly<Partial<Record<Timed, string>>>;
  readonly onChange: (draft: TimingsDraft) => void;
}

const SecondsFields = ({ draft, problems, onChange }: SecondsFieldsProps) =>
  TIMED_WORDS.map(([timed, words]) => (
    <SecondsField
      key={timed}
      timed={timed}
      words={words}
      text={draft[timed]}
      problem={problems[timed]}
      onChange={(text) => onChange({ ...draft, [timed]: text })}
    />
  ));

function useTimings(roomId: string, equipment: Equipment) {
  const router = useRouter();
  const sending = useSend();
  const [edit, setEdit] = useState(() => editOf(equipment.actionSeconds));
  // Saved here, taken from the classes, or saved in another window: the page was asked for again.
  if (edit.heard !== equipment.actionSeconds) setEdit(hearing(edit, equipment.actionSeconds));
  const [done, setDone] = useState("");
  const { given, problems } = readTimings(edit.draft);
  const wrong = Object.keys(problems).length > 0;
  const write = (next: TimingsDraft) => {
    setDone("");
    setEdit((now) => ({ ...now, draft: next }));
  };
  const save = async (everyRoom: boolean) => {
    if (wrong) return;
    const body = { actionSeconds: given, everyRoom };
    const saved = await sending.run("PUT", `/api/rooms/${roomId}/timings`, body, { reads: savedSchema });
    if (!saved) return;
    setEdit((now) => keeping(now, given));
    setDone(`Saved${roomsWords(saved.rooms)}. Open plans were timed again.`);
    router.refresh();
  };
  const { busy, problem } = sending;
  return { draft: edit.draft, given, problems, wrong, busy, problem, done, write, save };
}

/** How many rooms have the seconds now. */
const savedSchema = z.object({ rooms: z.number() });

const roomsWords = (rooms: number): string => (rooms > 1 ? ` for ${rooms === 2 ? "both" : `all ${rooms}`} rooms` : "");

interface SecondsProps {
  readonly timed: Timed;
  readonly words: string;
  readonly text: string;
  readonly problem: string | undefined;
  readonly onChange: (text: string) => void;
}

function SecondsField({ timed, words, text, problem, onChange }: SecondsProps) {
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
      <h2 id="typical">How long typical changes take</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">Change</th>
            <th scope="col" className="number">
              In this room
            </th>
            <th scope="col" className="number">
              Usual
            </th>
          </tr>
        </thead>
        <tbody>
          {typicalChanges(equipment).map((change) => {
            const cost = changeCost(change, equipment);
            return (
              <tr key={change.words}>
                <th scope="row">
                  {change.words}
                  <span className="quiet small">{actionsWords(cost.actions)}</span>
                </th>
                <td className="number">{cost.estimate} s</td>
                <td className="number">{changeCost(change, usual).estimate} s</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
