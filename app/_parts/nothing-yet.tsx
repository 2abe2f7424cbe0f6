/** A place with nothing in it: a bare stretch of rail where the first plate would be clasped, and what to do next. */
import type { ReactNode } from "react";
import styles from "./nothing-yet.module.css";

/** The words are paragraphs and acts; the drawing is decoration beside them. */
export function NothingYet({ children }: { readonly children: ReactNode }) {
  return (
    <div className={styles.place}>
      <svg className={styles.rail} viewBox="0 0 112 44" width="112" height="44" aria-hidden="true">
        <path className={styles.rails} d="M0 13H106M0 31H106" />
        <path className={styles.plate} d="M14 5h46v34h-46z" />
        <path className={styles.stop} d="M107 4v36" />
      </svg>
      <div className={styles.words}>{children}</div>
    </div>
  );
}
