"use client";
/** Changes the rubric: criteria and the sentence of each level. Nothing is sent until it is saved. */
import { type FormEvent, useId, useRef, useState } from "react";
import { newId } from "#app/_parts/new-id.ts";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { SendButton } from "#app/_parts/send-button.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import type { Criterion, Rubric } from "#lib/rubric/rubric.ts";
import styles from "./rubric.module.css";
import { levelLabel, RUBRIC, takeOutCriterion, takeOutLevel } from "./rubric-words.ts";

const FEWEST_LEVELS = 2;
const MOST_LEVELS = 6;
const MOST_CRITERIA = 12;

export function RubricForm({ rubric }: { readonly rubric: Rubric }) {
  const { criteria, write, submit, said, sending } = useRubric(rubric);
  const last = useRef<HTMLFieldSetElement>(null);
  const add = () => {
    write([...criteria, { id: newId(), name: "", levels: ["", "", "", ""] }]);
    requestAnimationFrame(() => last.current?.querySelector("input")?.focus());
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      {criteria.map((criterion, i) => (
        <CriterionFields
          key={criterion.id}
          criterion={criterion}
          element={i === criteria.length - 1 ? last : null}
          onChange={(next) => write(criteria.with(i, next))}
          onTakeOut={criteria.length > 1 ? () => write(criteria.toSpliced(i, 1)) : null}
        />
      ))}
      <ProblemLine say={sending.problem} />
      <div className="acts">
        <SendButton busy={sending.busy} doing={RUBRIC.saving}>
          {RUBRIC.save}
        </SendButton>
        {criteria.length < MOST_CRITERIA && <Act words={RUBRIC.addCriterion} onAct={add} look="button" />}
      </div>
      <p role="status" className={said === "" ? undefined : "done"}>
        {said}
      </p>
    </form>
  );
}

/** What is written, and the rubric that the server had when it was last known. */
function useRubric(rubric: Rubric) {
  const [criteria, setCriteria] = useState<readonly Criterion[]>(rubric.criteria);
  const [seen, setSeen] = useState(rubric);
  const [said, setSaid] = useState("");
  const sending = useSend();
  const write = (next: readonly Criterion[]) => {
    setSaid("");
    setCriteria(next);
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const next = { criteria: [...criteria] };
    if ((await sending.run("PUT", "/api/rubric", { rubric: next, seen })) === undefined) return;
    setSeen(next);
    setSaid(RUBRIC.saved);
  };
  return { criteria, write, submit, said, sending };
}

interface ActProps {
  readonly words: string;
  readonly onAct: () => void;
  readonly look: "button" | "act";
}

const Act = ({ words, onAct, look }: ActProps) => (
  <button type="button" className={look} onClick={onAct}>
    {words}
  </button>
);

interface CriterionProps {
  readonly criterion: Criterion;
  readonly element: React.RefObject<HTMLFieldSetElement | null> | null;
  readonly onChange: (next: Criterion) => void;
  readonly onTakeOut: (() => void) | null;
}

function CriterionFields({ criterion, element, onChange, onTakeOut }: CriterionProps) {
  const id = useId();
  const { name, levels } = criterion;
  const withLevels = (next: string[]) => onChange({ ...criterion, levels: next });
  return (
    <fieldset ref={element} className={styles.criterion}>
      <legend className="visually-hidden">{name === "" ? RUBRIC.name : name}</legend>
      <div className="field">
        <label htmlFor={id}>{RUBRIC.name}</label>
        <input
          id={id}
          value={name}
          required
          maxLength={60}
          onChange={(e) => onChange({ ...criterion, name: e.target.value })}
        />
      </div>
      {levels.map((sentence, i) => (
        <Level
          // biome-ignore lint/suspicious/noArrayIndexKey: a level is its place
          key={i}
          {...{ sentence, level: i + 1, of: levels.length }}
          onChange={(next) => withLevels(levels.with(i, next))}
          onTakeOut={levels.length > FEWEST_LEVELS ? () => withLevels(levels.toSpliced(i, 1)) : null}
        />
      ))}
      <div className="acts">
        {levels.length < MOST_LEVELS && (
          <Act words={RUBRIC.addLevel} onAct={() => withLevels([...levels, ""])} look="act" />
        )}
        {onTakeOut && <Act words={takeOutCriterion(name)} onAct={onTakeOut} look="act" />}
      </div>
    </fieldset>
  );
}

interface LevelProps {
  readonly sentence: string;
  readonly level: number;
  readonly of: number;
  readonly onChange: (next: string) => void;
  readonly onTakeOut: (() => void) | null;
}

function Level({ sentence, level, of, onChange, onTakeOut }: LevelProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{levelLabel(level, of)}</label>
      <div className={styles.level}>
        <input id={id} value={sentence} required maxLength={300} onChange={(e) => onChange(e.target.value)} />
        {onTakeOut && (
          <button type="button" className="act" onClick={onTakeOut}>
            {takeOutLevel(level)}
          </button>
        )}
      </div>
    </div>
  );
}
