"use client";
/**
 * The one modal dialog, on the platform's own element: open while it is mounted, Escape closes it, focus is kept inside
 * and goes back where it was. A sheet is larger, scrolls inside and keeps what is at its foot in sight.
 */
import { type ReactNode, type RefObject, useId } from "react";
import styles from "./dialog.module.css";
import { useOpenDialog } from "./use-open-dialog.ts";

interface DialogProps {
  readonly title: string;
  /** Called once it is closed, by whatever way. */
  readonly onClose: () => void;
  /** Set to a way to close it from inside. */
  readonly closer?: RefObject<(() => void) | null>;
  readonly size?: "dialog" | "sheet";
  /** Of a sheet: stays in sight while the rest scrolls. */
  readonly foot?: ReactNode;
  /** Beside the size, for one that fits neither. */
  readonly className?: string | undefined;
  /** Set to the element, for who moves the focus inside. */
  readonly element?: RefObject<HTMLDialogElement | null>;
  readonly children: ReactNode;
}

export function Dialog({ title, onClose, closer, size = "dialog", foot, className, element, children }: DialogProps) {
  const { close, ...dialog } = useOpenDialog(onClose, closer, element);
  const id = useId();
  const sheet = size === "sheet";
  return (
    <dialog {...dialog} className={`${sheet ? styles.sheet : styles.dialog} ${className ?? ""}`} aria-labelledby={id}>
      <div className={`dialog-head ${styles.head}`}>
        <h2 id={id}>{title}</h2>
        <button type="button" className="button" onClick={close}>
          Close
        </button>
      </div>
      {sheet ? <div className={styles.body}>{children}</div> : children}
      {foot && <div className={styles.foot}>{foot}</div>}
    </dialog>
  );
}
