"use client";
/** A dialog of the margin: a title and its content. */
import type { ReactNode, RefObject } from "react";
import { Dialog } from "#app/_parts/dialog.tsx";
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
  return (
    <Dialog title={title} onClose={onClosed} closer={closer} className={wide ? styles.wide : undefined}>
      <div className={styles.dialog}>{children}</div>
    </Dialog>
  );
}
