"use client";
/** A link or an address to hand on: shown in full, selectable, and copied by a button where the browser allows it. */
import { useId, useState } from "react";
import styles from "./copy-link.module.css";

export function CopyLink({ link, label }: { readonly link: string; readonly label: string }) {
  const id = useId();
  const [said, setSaid] = useState("");
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link);
      setSaid("Copied.");
    } catch {
      setSaid("This browser does not allow copying by a button. Select the link and copy it with the keyboard.");
    }
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className={styles.copy}>
        <input id={id} className="mono" value={link} readOnly onFocus={(event) => event.currentTarget.select()} />
        <button type="button" className="button" onClick={copy}>
          Copy
        </button>
      </div>
      <span className="hint" role="status">
        {said}
      </span>
    </div>
  );
}
