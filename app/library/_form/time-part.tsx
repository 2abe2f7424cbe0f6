"use client";
/** Timing of the move: its tempo, when to breathe out, how long it may last, how much effort it takes. */
import { readMoveTimes, TEMPO_KEYS } from "#lib/library/draft.ts";
import { MET_NOTE, repWords, tempoWords } from "#lib/library/move-words.ts";
import styles from "./form.module.css";
import { OneOf, PairInput, TextInput } from "./form-fields.tsx";
import { TEMPO_WORDS } from "./part-words.ts";
import type { MoveFormState } from "./use-move-form.ts";

export function TimePart({ form }: { readonly form: MoveFormState }) {
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
      {draft.tempo === "moving" ? <TempoFields form={form} /> : null}
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
      <LengthAndEffort form={form} />
    </>
  );
}

function TempoFields({ form: { draft, faultAt, set } }: { readonly form: MoveFormState }) {
  return (
    <div className={styles.four}>
      {TEMPO_KEYS.map((key) => (
        <TextInput
          key={key}
          place={`tempo.${key}`}
          label={TEMPO_WORDS[key]}
          unit="s"
          decimal
          value={draft.times[key]}
          fault={faultAt(`tempo.${key}`)}
          onChange={(typed) => set({ times: { ...draft.times, [key]: typed } }, `tempo.${key}`)}
        />
      ))}
    </div>
  );
}

function LengthAndEffort({ form: { draft, faultAt, set } }: { readonly form: MoveFormState }) {
  return (
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
  );
}

/** What the numbers add up to, as they are typed. */
function Repetitions({ form }: { readonly form: MoveFormState }) {
  const times = readMoveTimes(form.draft);
  if (!times) return null;
  return <p className={styles.sum}>{[tempoWords(times), repWords(times)].filter(Boolean).join("; ")}</p>;
}
