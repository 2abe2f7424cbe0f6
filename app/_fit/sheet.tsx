"use client";
/** A preview over the plan: its title, a way out, what it shows, and the act at its foot, always in sight. */
import { type ReactNode, type RefObject, useEffect, useId, useRef } from "react";
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
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const own = dialog.current;
    if (!own) return;
    if (!own.open) own.showModal();
    closer.current = () => own.close();
    return () => {
      closer.current = null;
      // Taken away while open: closing first gives the focus back.
      if (own.open) own.close();
    };
  }, [closer]);
  // A close that was followed by an opening (React mounts twice while developing) is none.
  const closed = () => {
    if (dialog.current?.open !== true) onClosed();
  };
  return (
    <dialog ref={dialog} className={styles.sheet} aria-labelledby={id} onClose={closed}>
      <div className={styles.head}>
        <h2 id={id}>{title}</h2>
        <button type="button" className="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <div className={styles.body}>{children}</div>
      {foot && <div className={styles.foot}>{foot}</div>}
    </dialog>
  );
}
