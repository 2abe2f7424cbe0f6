"use client";
/**
 * What an undo left as it is, since somebody else has changed it: to be read by whoever does not hear the live region, which
 * says the same. It lies over the page, so that nothing moves, takes no pointer, and goes by itself.
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
