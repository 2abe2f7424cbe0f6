"use client";
/** A link to hand to somebody: shown whole, selectable, and copied with one button where the browser allows it. */
import { useId, useState } from "react";
import styles from "./people.module.css";

export function CopyLink({ link, label }: { readonly link: string; readonly label: string }) {
  const id = useId();
  const [said, setSaid] = useState("");
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link);
      setSaid("Copied.");
    } catch {
      setSaid("The browser does not let this page copy: select the link and copy it yourself.");
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
