"use client";
/** Words that the screen does not show in full, to read and to copy. */
import { useId, useRef, useState } from "react";
import styles from "./kept-words.module.css";

/** Lines shown before it scrolls. */
const MOST_ROWS = 5;

export function KeptWords({ label, words }: { readonly label: string; readonly words: string }) {
  const id = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  const [said, setSaid] = useState("");
  const copy = () => {
    const taken =
      navigator.clipboard?.writeText(words) ?? Promise.reject(new Error("no clipboard on an insecure page"));
    taken.then(
      () => setSaid("Copied."),
      () => {
        field.current?.select();
        setSaid(
          "This browser does not allow copying by a button. The words are selected: copy them with the keyboard.",
        );
      },
    );
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <textarea ref={field} id={id} readOnly rows={Math.min(MOST_ROWS, words.split("\n").length)} value={words} />
      <p className={styles.copy}>
        <button type="button" className="button" onClick={copy}>
          Copy the words
        </button>
        <span role="status">{said}</span>
      </p>
    </div>
  );
}
