"use client";
import Link from "next/link";
import { useRouter } from "next/navigation";
import { type FormEvent, useId, useState } from "react";
import { textOf } from "#app/_parts/form-field.tsx";
/** The form of marks: what is marked, a level for each criterion, and a sentence. */
import { useFormats } from "#app/_parts/formats.tsx";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { SendButton } from "#app/_parts/send-button.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { Criterion } from "#lib/rubric/rubric.ts";
import type { PlanMarks } from "#server/marks/plan-marks.ts";
import styles from "./marks.module.css";
import { classWords, MARKS, roundWords, setWords } from "./marks-words.ts";

interface FormProps {
  readonly marks: PlanMarks;
  /** What to begin with: "round-2" or "class-<session>"; the newest round when it is null or unknown. */
  readonly of: string | null;
}

interface Choice {
  readonly key: string;
  readonly words: string;
}

export function MarksForm({ marks, of }: FormProps) {
  const choices = choicesOf(marks, useFormats());
  const [key, setKey] = useState(choices.find((choice) => choice.key === of)?.key ?? choices[0]?.key ?? "");
  const [said, setSaid] = useState("");
  const [sent, setSent] = useState(0);
  const sending = useSend();
  const router = useRouter();
  const taught = marks.classes.find(({ sessionId }) => `class-${sessionId}` === key);
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setSaid("");
    const form = new FormData(event.currentTarget);
    const body = bodyOf(form, key, marks);
    if ((await sending.run("POST", `/api/plans/${marks.planId}/marks`, body)) === undefined) return;
    setSaid(setWords(nameOf(marks, key, textOf(form, "whom"))));
    setSent(sent + 1);
    router.refresh();
  };
  return (
    <form key={sent} className={styles.form} onSubmit={submit}>
      <Select label={MARKS.what} value={key} choices={choices} onChange={setKey} />
      {taught && <Whom key={taught.sessionId} marks={marks} teacherId={taught.teacherId} />}
      {marks.rubric.criteria.map((criterion) => (
        <CriterionField key={criterion.id} criterion={criterion} />
      ))}
      <Sentence />
      <ProblemLine say={sending.problem} />
      <Acts busy={sending.busy} />
      <p role="status" className={said === "" ? undefined : "done"}>
        {said}
      </p>
    </form>
  );
}

const Acts = ({ busy }: { readonly busy: boolean }) => (
  <div className="acts">
    <SendButton busy={busy} doing={MARKS.sending}>
      {MARKS.send}
    </SendButton>
    <Link className="link-line" href="/rubric">
      {MARKS.rubric}
    </Link>
  </div>
);

const choicesOf = ({ rounds, classes }: PlanMarks, f: Formats): Choice[] => [
  ...rounds.map(({ number, offererName, offeredAt }) => ({
    key: `round-${number}`,
    words: roundWords(number, offererName, offeredAt, f),
  })),
  ...classes.map(({ sessionId, edition, at }) => ({ key: `class-${sessionId}`, words: classWords(edition, at, f) })),
];

function bodyOf(form: FormData, key: string, { rubric }: PlanMarks) {
  const levels = rubric.criteria.flatMap(({ id }) => {
    const level = Number(textOf(form, `level-${id}`));
    return level > 0 ? [[id, level] as const] : [];
  });
  const about = key.startsWith("round-")
    ? { kind: "round", round: Number(key.slice("round-".length)) }
    : { kind: "class", sessionId: key.slice("class-".length), userId: textOf(form, "whom") };
  return { about, levels: Object.fromEntries(levels), sentence: textOf(form, "sentence") };
}

function nameOf({ rounds, people }: PlanMarks, key: string, whom: string): string {
  const round = rounds.find(({ number }) => `round-${number}` === key);
  return round?.offererName ?? people.find(({ id }) => id === whom)?.name ?? "The person";
}

interface SelectProps {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly Choice[];
  readonly onChange: (key: string) => void;
}

function Select({ label, value, choices, onChange }: SelectProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value)}>
        {choices.map(({ key, words }) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}

function Whom({ marks, teacherId }: { readonly marks: PlanMarks; readonly teacherId: string | null }) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{MARKS.whom}</label>
      <select id={id} name="whom" defaultValue={teacherId ?? marks.people[0]?.id} aria-describedby={`${id}-hint`}>
        {marks.people.map(({ id: userId, name }) => (
          <option key={userId} value={userId}>
            {name}
          </option>
        ))}
      </select>
      <span className="hint" id={`${id}-hint`}>
        {MARKS.whomHint}
      </span>
    </div>
  );
}

function CriterionField({ criterion: { id, name, levels } }: { readonly criterion: Criterion }) {
  return (
    <fieldset className={styles.criterion}>
      <legend>{name}</legend>
      {levels.map((sentence, i) => (
        <label key={sentence} className="check">
          <input type="radio" name={`level-${id}`} value={i + 1} />
          <span>
            <b className="mono">{i + 1}</b> {sentence}
          </span>
        </label>
      ))}
      <label className="check">
        <input type="radio" name={`level-${id}`} value="" defaultChecked />
        <span className="quiet">{MARKS.notLooked}</span>
      </label>
    </fieldset>
  );
}

function Sentence() {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{MARKS.sentence}</label>
      <textarea id={id} name="sentence" required maxLength={600} aria-describedby={`${id}-hint`} />
      <span className="hint" id={`${id}-hint`}>
        {MARKS.sentenceHint}
      </span>
    </div>
  );
}
