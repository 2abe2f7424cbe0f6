"use client";
/** How somebody wants to be told: when the digest comes, and each kind by e-mail or not. */
import { type FormEvent, useEffect, useId, useState } from "react";
import { isNoticeKind, type KindChoices, NOTICE_KINDS, TOLD, type Told } from "#lib/notices/kinds.ts";
import type { NoticeChoiceView } from "#server/notices/notice-choices.ts";
import { SelectField } from "../_parts/choice.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import { ZoneField } from "../_parts/zone-field.tsx";
import styles from "./notices.module.css";
import { CHOICES, TOLD_WORDS } from "./notices-words.ts";
import { useZone } from "./use-zone.ts";

const USUAL_TIME = "07:30";

export function ChoicesForm({ choice }: { readonly choice: NoticeChoiceView }) {
  const form = useChoices(choice);
  return (
    <form className={styles.form} onSubmit={form.save}>
      {form.chosen ? null : <p className="notice">{CHOICES.notYet}</p>}
      <DigestFields form={form} />
      <fieldset className={styles.kinds}>
        <legend>What is sent</legend>
        {Object.keys(choice.kinds)
          .filter(isNoticeKind)
          .map((kind) => (
            <SelectField<Told>
              key={kind}
              label={NOTICE_KINDS[kind].label}
              value={form.kinds[kind] ?? "off"}
              options={TOLD.map((value) => ({ value, label: TOLD_WORDS[value] }))}
              onChoose={(told) => form.setKinds({ ...form.kinds, [kind]: told })}
            />
          ))}
      </fieldset>
      <ProblemLine say={form.problem} />
      <div className={styles.save}>
        <SendButton busy={form.busy} doing="Saving…">
          Save
        </SendButton>
        <p role="status">{form.saved ? CHOICES.saved : ""}</p>
      </div>
    </form>
  );
}

function useChoices(choice: NoticeChoiceView) {
  const here = useZone(choice.timeZone);
  const sending = useSend();
  const [chosen, setChosen] = useState(choice.chosen);
  const [saved, setSaved] = useState(false);
  const [digest, setDigest] = useState(choice.digestAt !== null);
  const [time, setTime] = useState(choice.digestAt ?? USUAL_TIME);
  /** Null: the browser's own, which the server does not know. */
  const [zone, setZone] = useState<string | null>(choice.chosen ? choice.timeZone : null);
  const [kinds, setKinds] = useState<KindChoices>(choice.kinds);
  const save = async (event: FormEvent) => {
    event.preventDefault();
    setSaved(false);
    const body = { digestAt: digest ? time : null, timeZone: zone ?? here, kinds };
    if ((await sending.run("PUT", "/api/notices/choice", body)) === undefined) return;
    setChosen(true);
    setSaved(true);
  };
  return {
    ...{ chosen, saved, digest, setDigest, time, setTime, kinds, setKinds, save },
    ...{ zone: zone ?? here, here, setZone, busy: sending.busy, problem: sending.problem },
  };
}

function DigestFields({ form }: { readonly form: ReturnType<typeof useChoices> }) {
  const { digest, setDigest, time, setTime, zone, here, setZone } = form;
  const id = useId();
  return (
    <fieldset className={styles.digest}>
      <legend>The daily digest</legend>
      <label className="check">
        <input type="checkbox" checked={digest} onChange={(event) => setDigest(event.target.checked)} />
        One mail a day, when there is something new
      </label>
      <div className={`field ${styles.time}`}>
        <label htmlFor={id}>Time of day</label>
        <input
          id={id}
          type="time"
          required={digest}
          disabled={!digest}
          value={time}
          onChange={(event) => setTime(event.target.value)}
        />
      </div>
      <OwnZone zone={zone} here={here} disabled={!digest} onChoose={setZone} />
    </fieldset>
  );
}

interface ZoneProps {
  readonly zone: string;
  readonly here: string;
  readonly disabled: boolean;
  readonly onChoose: (zone: string) => void;
}

/** All zones that the browser knows, once the page is in a browser: the server may know others. */
function OwnZone({ zone, here, disabled, onChoose }: ZoneProps) {
  const [names, setNames] = useState<readonly string[]>([]);
  useEffect(() => setNames(Intl.supportedValuesOf("timeZone")), []);
  return (
    <ZoneField
      label="Time zone"
      zone={zone}
      zones={[here, ...names]}
      disabled={disabled}
      hint={CHOICES.zoneHint}
      onChoose={onChoose}
    />
  );
}
