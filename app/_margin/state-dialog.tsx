"use client";
/** A dialog of the margin: a title and its content. */
import { type ReactNode, type RefObject, useId } from "react";
import { useOpenDialog } from "#app/_parts/use-open-dialog.ts";
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
  const dialog = useOpenDialog(closer, onClosed);
  const id = useId();
  return (
    <dialog {...dialog} aria-labelledby={id} className={wide ? styles.wide : undefined}>
      <div className={styles.dialog}>
        <h2 id={id}>{title}</h2>
        {children}
      </div>
    </dialog>
  );
}
