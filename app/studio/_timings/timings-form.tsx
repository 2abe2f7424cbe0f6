"use client";
/** A room's own seconds for each part of a change, and how long typical changes then take. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import * as z from "zod/mini";
import { actionsWords } from "#app/_session/item-words.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { SPREAD_SHARE } from "#lib/transitions/slowest.ts";
import { DEFAULT_ACTION_SECONDS } from "#lib/transitions/transitions.ts";
import { ProblemLine } from "../../_parts/problem-line.tsx";
import { SendButton } from "../../_parts/send-button.tsx";
import { useSend } from "../../_parts/use-send.ts";
import { changeCost, TIMED_WORDS, type Timed, typicalChanges } from "./timing-words.ts";
import styles from "./timings.module.css";
import {
  editOf,
  hearing,
  keeping,
  readSpread,
  readTimings,
  spreadTextOf,
  type TimingsDraft,
  timingsDraftOf,
} from "./timings-draft.ts";

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
        <SpreadField {...form.spread} />
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
          <button type="button" className="button" onClick={form.clear}>
            Clear all
          </button>
        </div>
        <ProblemLine say={form.problem} />
        <p role="status" className={form.done ? "done" : undefined}>
          {form.done}
        </p>
      </div>
      <Typical equipment={{ ...equipment, actionSeconds: given, spreadShare: form.spread.share ?? undefined }} />
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
    <OwnField
      key={timed}
      id={`seconds-${timed}`}
      words={words}
      unit="s"
      usual={DEFAULT_ACTION_SECONDS[timed]}
      text={draft[timed]}
      problem={problems[timed]}
      onChange={(text) => onChange({ ...draft, [timed]: text })}
    />
  ));

const SpreadField = ({ text, problem, write }: ReturnType<typeof useSpread>) => (
  <OwnField
    id="spread"
    words="How much people differ in a change"
    unit="%"
    usual={SPREAD_SHARE * 100}
    text={text}
    problem={problem}
    onChange={write}
  />
);

function useTimings(roomId: string, equipment: Equipment) {
  const router = useRouter();
  const sending = useSend();
  const [edit, setEdit] = useState(() => editOf(equipment.actionSeconds));
  // Saved here, taken from the classes, or saved in another window: the page was asked for again.
  if (edit.heard !== equipment.actionSeconds) setEdit(hearing(edit, equipment.actionSeconds));
  const [done, setDone] = useState("");
  const { given, problems } = readTimings(edit.draft);
  const spread = useSpread(equipment.spreadShare, () => setDone(""));
  const wrong = Object.keys(problems).length > 0 || spread.share === undefined;
  const write = (next: TimingsDraft) => {
    setDone("");
    setEdit((now) => ({ ...now, draft: next }));
  };
  const save = async (everyRoom: boolean) => {
    if (wrong) return;
    const body = { actionSeconds: given, spreadShare: spread.share, everyRoom };
    const saved = await sending.run("PUT", `/api/rooms/${roomId}/timings`, body, { reads: savedSchema });
    if (!saved) return;
    setEdit((now) => keeping(now, given));
    setDone(`Saved${roomsWords(saved.rooms)}. Open plans were timed again.`);
    router.refresh();
  };
  const clear = () => {
    write(timingsDraftOf(undefined));
    spread.write("");
  };
  const { busy, problem } = sending;
  return { draft: edit.draft, given, problems, spread, wrong, busy, problem, done, write, clear, save };
}

/** What is typed stays until the room's own share is another. */
function useSpread(room: number | undefined, onWrite: () => void) {
  const [typed, setTyped] = useState({ text: spreadTextOf(room), over: room });
  const text = typed.over === room ? typed.text : spreadTextOf(room);
  const write = (next: string) => {
    onWrite();
    setTyped({ text: next, over: room });
  };
  return { text, write, ...readSpread(text) };
}

/** How many rooms have the seconds now. */
const savedSchema = z.object({ rooms: z.number() });

const roomsWords = (rooms: number): string => (rooms > 1 ? ` for ${rooms === 2 ? "both" : `all ${rooms}`} rooms` : "");

interface OwnProps {
  readonly id: string;
  readonly words: string;
  readonly unit: string;
  readonly usual: number;
  readonly text: string;
  readonly problem: string | undefined;
  readonly onChange: (text: string) => void;
}

/** A number of the room's own; empty for the usual. */
function OwnField({ id, words, unit, usual, text, problem, onChange }: OwnProps) {
  return (
    <div className={styles.one}>
      <label htmlFor={id}>{words}</label>
      <span className="with-unit with-unit-number">
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          placeholder={`usual ${usual}`}
          aria-invalid={problem !== undefined}
          aria-describedby={problem === undefined ? "own-seconds" : `${id}-say`}
          onChange={(event) => onChange(event.target.value)}
        />
        {unit}
      </span>
      {problem && (
        <span id={`${id}-say`} className="problem" role="alert">
          {problem}
        </span>
      )}
    </div>
  );
}

/** People changing at once, as an example beside one person's seconds. */
const CLASS_OF = 10;

function Typical({ equipment }: { readonly equipment: Equipment }) {
  const { actionSeconds: _own, spreadShare: _spread, ...usual } = equipment;
  return (
    <section className={styles.typical} aria-labelledby="typical">
      <h2 id="typical">How long typical changes take</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">Change</th>
            <th scope="col" className="number">
              One person here
            </th>
            <th scope="col" className="number">
              {CLASS_OF} people
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
                <td className="number">{changeCost(change, equipment, CLASS_OF).estimate} s</td>
                <td className="number">{changeCost(change, usual).estimate} s</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
