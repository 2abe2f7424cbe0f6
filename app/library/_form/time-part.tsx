"use client";
/** How it is done in time: the tempo, where the breath goes out, how long it may last, what it costs. */
import { readMoveTimes, TEMPO_KEYS, type TempoKey } from "#lib/library/draft.ts";
import { MET_NOTE, repWords, tempoWords } from "#lib/library/move-words.ts";
import styles from "./form.module.css";
import { OneOf, PairInput, TextInput } from "./form-fields.tsx";
import type { MoveForm } from "./use-move-form.ts";

const TIME_WORDS: Readonly<Record<TempoKey, string>> = {
  outSeconds: "out",
  outHoldSeconds: "hold there",
  backSeconds: "back",
  backHoldSeconds: "hold at home",
};

export function TimePart({ form }: { readonly form: MoveForm }) {
  const { draft, faultAt, set } = form;
  return (
    <>
      <OneOf
        place="tempo"
        label="Tempo"
        value={draft.tempo}
        fault={faultAt("tempo")}
        options={[
          ["moving", "out and back"],
          ["held", "held"],
        ]}
        onChange={(tempo) => set({ tempo }, "tempo")}
      />
      {draft.tempo === "moving" ? (
        <div className={styles.four}>
          {TEMPO_KEYS.map((key) => (
            <TextInput
              key={key}
              place={`tempo.${key}`}
              label={TIME_WORDS[key]}
              unit="s"
              decimal
              value={draft.times[key]}
              fault={faultAt(`tempo.${key}`)}
              onChange={(typed) => set({ times: { ...draft.times, [key]: typed } }, `tempo.${key}`)}
            />
          ))}
        </div>
      ) : null}
      <Repetitions form={form} />
      <OneOf
        place="exhaleOn"
        label="Breathe out"
        value={draft.exhaleOn}
        fault={faultAt("exhaleOn")}
        none="keeps flowing"
        options={[
          ["out", "on the way out"],
          ["back", "on the way back"],
        ]}
        onChange={(exhaleOn) => set({ exhaleOn }, "exhaleOn")}
      />
      <div className={styles.two}>
        <PairInput
          place="seconds"
          legend="How long at a time"
          names={["shortest", "longest"]}
          unit="s"
          value={draft.seconds}
          faultAt={faultAt}
          onChange={(seconds, place) => set({ seconds }, place)}
        />
        <TextInput
          place="met"
          label="Effort"
          unit="MET"
          decimal
          hint={MET_NOTE}
          value={draft.met}
          fault={faultAt("met")}
          onChange={(met) => set({ met }, "met")}
        />
      </div>
    </>
  );
}

/** What the numbers come to, as they are typed. */
function Repetitions({ form }: { readonly form: MoveForm }) {
  const times = readMoveTimes(form.draft);
  if (!times) return null;
  return <p className={styles.sum}>{[tempoWords(times), repWords(times)].filter(Boolean).join("; ")}</p>;
}
