"use client";
/** Every act and its keys. With `onChoose`, an act can be given another key or pedal by pressing it. */
import { useEffect, useState } from "react";
import { KEY_ACT_WORDS, KEY_ACTS, type KeyAct, type KeyChoice, keysOfAct, withKey } from "#lib/floor/keys.ts";
import styles from "../_ready/ready-screen.module.css";

interface Props {
  readonly chosen: KeyChoice;
  onChoose?(chosen: KeyChoice): void;
}

export function KeyTable({ chosen, onChoose }: Props) {
  const [asked, setAsked] = useState<KeyAct | null>(null);
  useEffect(() => {
    if (!asked || !onChoose) return;
    const take = (event: KeyboardEvent) => {
      const next = withKey(chosen, event.key, asked);
      setAsked(null);
      if (!next) return;
      event.preventDefault();
      onChoose(next);
    };
    window.addEventListener("keydown", take, { once: true });
    return () => window.removeEventListener("keydown", take);
  }, [asked, chosen, onChoose]);
  return (
    <>
      <dl className={styles.keys}>
        {KEY_ACTS.map((act) => (
          <div key={act}>
            <dt>{keysOfAct(act, chosen)}</dt>
            <dd>
              {KEY_ACT_WORDS[act]}
              {onChoose && (
                <button type="button" className="button button-quiet" onClick={() => setAsked(act)}>
                  {asked === act ? "press the key or pedal now" : "another key"}
                  <span className="visually-hidden"> for: {KEY_ACT_WORDS[act]}</span>
                </button>
              )}
            </dd>
          </div>
        ))}
      </dl>
      {onChoose && Object.keys(chosen).length > 0 && (
        <button type="button" className="button" onClick={() => onChoose({})}>
          Back to the usual keys
        </button>
      )}
    </>
  );
}
