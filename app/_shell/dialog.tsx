"use client";
/** A modal dialog on the platform's own element: Escape closes it, focus is kept inside and goes back where it was. */
import { type ReactNode, useEffect, useId, useRef } from "react";
import styles from "./dialog.module.css";

interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** Open while it is mounted. A field marked `data-first` has the focus then; else the first thing that takes it. */
export function Dialog({ title, onClose, children }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = ref.current;
    if (dialog && !dialog.open) {
      dialog.showModal();
      dialog.querySelector<HTMLElement>("[data-first]")?.focus();
    }
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={ref}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div className={styles.head}>
        <h2 id={id}>{title}</h2>
        <button type="button" className="button button-quiet" onClick={onClose}>
          Close
        </button>
      </div>
      {children}
    </dialog>
  );
}
