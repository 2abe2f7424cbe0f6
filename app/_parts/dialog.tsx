"use client";
/** A modal dialog on the platform's own element: Escape closes it, focus is kept inside and goes back where it was. */
import { type ReactNode, useEffect, useId, useRef } from "react";
import styles from "./dialog.module.css";
import { openDialog } from "./use-open-dialog.ts";

interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** Open while it is mounted. */
export function Dialog({ title, onClose, children }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = ref.current;
    if (dialog) openDialog(dialog);
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
      <div className={`dialog-head ${styles.head}`}>
        <h2 id={id}>{title}</h2>
        <button type="button" className="button button-quiet" onClick={onClose}>
          Close
        </button>
      </div>
      {children}
    </dialog>
  );
}
