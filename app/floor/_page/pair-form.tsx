"use client";
/** Takes the pairing code. Letters and figures only, large, forgiving of spaces and small letters. */
import { type FormEvent, useState } from "react";
import { DEVICES_PLACE, DEVICES_WORDS } from "#lib/protocol/places.ts";
import type { Pairing } from "../_parts/kept.ts";
import { pair } from "../_parts/studio-calls.ts";
import styles from "./pair-form.module.css";

const LENGTH = 8;

/** "abcd2345" as it is shown: "ABCD 2345". */
const shown = (typed: string): string => {
  const signs = typed
    .toUpperCase()
    .replace(/[^0-9A-Z]/g, "")
    .slice(0, LENGTH);
  return signs.length > LENGTH / 2 ? `${signs.slice(0, LENGTH / 2)} ${signs.slice(LENGTH / 2)}` : signs;
};

interface Props {
  readonly notices: readonly string[];
  onPaired(pairing: Pairing): Promise<void>;
}

export function PairForm({ notices, onPaired }: Props) {
  const [code, setCode] = useState("");
  const [problem, setProblem] = useState("");
  const [asking, setAsking] = useState(false);

  async function handleSubmit(event: FormEvent) {
    event.preventDefault();
    if (code.replace(/\s/g, "").length !== LENGTH) {
      setProblem(`The code has ${LENGTH} signs.`);
      return;
    }
    setAsking(true);
    setProblem("");
    const answer = await pair(code);
    if (answer.ok) {
      await onPaired(answer.value).catch(() => setProblem("This browser gives the page no storage: use another one."));
    } else setProblem(answer.message);
    setAsking(false);
  }

  return (
    <form className={styles.form} onSubmit={handleSubmit}>
      <h1>Pair this device</h1>
      <p className={styles.how}>
        The manager of the studio makes a code in the workspace, under <a href={DEVICES_PLACE.href}>{DEVICES_WORDS}</a>.
        It works once, for ten minutes, and makes this device a cue device of one room.
      </p>
      <div className="field">
        <label htmlFor="code">Pairing code</label>
        <input
          id="code"
          className={styles.code}
          value={code}
          onChange={(event) => setCode(shown(event.target.value))}
          autoComplete="one-time-code"
          autoCapitalize="characters"
          spellCheck={false}
          autoCorrect="off"
          enterKeyHint="go"
          aria-describedby={problem ? "code-problem" : undefined}
          aria-invalid={problem !== ""}
        />
      </div>
      {problem && (
        <p id="code-problem" className="problem" role="alert">
          {problem}
        </p>
      )}
      {notices.map((notice) => (
        <p key={notice} className="notice">
          {notice}
        </p>
      ))}
      <button type="submit" className={`button button-strong ${styles.go}`} disabled={asking}>
        {asking ? "Pairing" : "Pair"}
      </button>
    </form>
  );
}
