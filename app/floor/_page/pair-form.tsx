"use client";
/** The field for the pairing code: letters and digits only, large, whatever spaces and lower-case letters are typed. */
import { type FormEvent, useEffect, useState } from "react";
import { DEVICES_PLACE, DEVICES_WORDS, FLOOR_CODE_KEY } from "#lib/protocol/places.ts";
import { NO_STORAGE } from "../_parts/floor-words.ts";
import type { Pairing } from "../_parts/kept.ts";
import { pair } from "../_parts/studio-calls.ts";
import { codeLengthWords } from "./page-words.ts";
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
  const { code, setCode, problem, asking, submit } = usePairing(onPaired);
  return (
    <form className={styles.form} onSubmit={submit}>
      <h1>Pair this device</h1>
      <p className={styles.how}>
        A manager of the studio makes a code in the workspace, under <a href={DEVICES_PLACE.href}>{DEVICES_WORDS}</a>.
        It works once, within ten minutes, and pairs this device with one room.
      </p>
      <CodeField code={code} onCode={setCode} problem={problem} />
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

/** The code that a scanned address brought. It is taken out of the address, which would otherwise stay in the history. */
function broughtCode(): string {
  const brought = new URLSearchParams(location.hash.slice(1)).get(FLOOR_CODE_KEY);
  if (brought === null) return "";
  history.replaceState(null, "", location.pathname + location.search);
  return shown(brought);
}

/** The code as typed or brought, and pairing with it. */
function usePairing(onPaired: Props["onPaired"]) {
  const [code, setCode] = useState("");
  useEffect(() => {
    const take = () => setCode((was) => broughtCode() || was);
    take();
    addEventListener("hashchange", take);
    return () => removeEventListener("hashchange", take);
  }, []);
  const [problem, setProblem] = useState("");
  const [asking, setAsking] = useState(false);
  async function submit(event: FormEvent) {
    event.preventDefault();
    if (code.replace(/\s/g, "").length !== LENGTH) {
      setProblem(codeLengthWords(LENGTH));
      return;
    }
    setAsking(true);
    setProblem("");
    const answer = await pair(code);
    if (answer.ok) await onPaired(answer.value).catch(() => setProblem(NO_STORAGE));
    else setProblem(answer.message);
    setAsking(false);
  }
  return { code, setCode, problem, asking, submit };
}

interface FieldProps {
  readonly code: string;
  readonly problem: string;
  onCode(code: string): void;
}

function CodeField({ code, problem, onCode }: FieldProps) {
  return (
    <div className="field">
      <label htmlFor="code">Pairing code</label>
      <input
        id="code"
        className={styles.code}
        value={code}
        onChange={(event) => onCode(shown(event.target.value))}
        autoComplete="one-time-code"
        autoCapitalize="characters"
        spellCheck={false}
        autoCorrect="off"
        enterKeyHint="go"
        aria-describedby={problem ? "code-problem" : undefined}
        aria-invalid={problem !== ""}
      />
    </div>
  );
}
