"use client";
/**
 * What an undo left as it was, because somebody else has changed it since. The live region reads the same sentence aloud.
 * It lies over the page so that nothing moves, ignores the pointer, and goes away by itself.
 */
import styles from "./not-undone-notice.module.css";

export function NotUndoneNotice({ sentence }: { readonly sentence: string | null }) {
  if (sentence === null) return null;
  return (
    <p className={styles.notice} data-not-undone aria-hidden="true">
      {sentence}
    </p>
  );
}
