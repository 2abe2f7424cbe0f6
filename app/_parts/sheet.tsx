"use client";
/** A preview over the plan: its title, a way out, what it shows, and the act at its foot, always in sight. */
import { type ReactNode, type RefObject, useId } from "react";
import { useOpenDialog } from "#app/_parts/use-open-dialog.ts";
import styles from "./sheet.module.css";

interface SheetProps {
  readonly title: string;
  readonly onClosed: () => void;
  /** Set to a way to close it from inside. */
  readonly closer: RefObject<(() => void) | null>;
  readonly children: ReactNode;
  readonly foot?: ReactNode;
}

export function Sheet({ title, onClosed, closer, children, foot }: SheetProps) {
  const dialog = useOpenDialog(closer, onClosed);
  const id = useId();
  return (
    <dialog {...dialog} className={styles.sheet} aria-labelledby={id}>
      <div className={`dialog-head ${styles.head}`}>
        <h2 id={id}>{title}</h2>
        <button type="button" className="button" onClick={() => closer.current?.()}>
          Close
        </button>
      </div>
      <div className={styles.body}>{children}</div>
      {foot && <div className={styles.foot}>{foot}</div>}
    </dialog>
  );
}
