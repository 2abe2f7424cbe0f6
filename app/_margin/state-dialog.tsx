"use client";
/** A native dialog that opens when it is put on the page. Escape closes it, and the focus goes back where it was. */
import { type ReactNode, type RefObject, useEffect, useId, useRef } from "react";
import styles from "./margin.module.css";

interface Props {
  readonly title: string;
  readonly onClosed: () => void;
  /** Set to a way to close it from inside. */
  readonly closer: RefObject<(() => void) | null>;
  readonly wide?: boolean;
  readonly children: ReactNode;
}

export function StateDialog({ title, onClosed, closer, wide = false, children }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const own = dialog.current;
    if (!own) return;
    if (!own.open) own.showModal();
    closer.current = () => own.close();
    return () => {
      closer.current = null;
      // Taken away while open (the state changed under it): closing first gives the focus back.
      if (own.open) own.close();
    };
  }, [closer]);
  // A close that was followed by an opening (React mounts twice while developing) is none.
  const closed = () => {
    if (dialog.current?.open !== true) onClosed();
  };
  return (
    <dialog ref={dialog} aria-labelledby={id} className={wide ? styles.wide : undefined} onClose={closed}>
      <div className={styles.dialog}>
        <h2 id={id}>{title}</h2>
        {children}
      </div>
    </dialog>
  );
}
