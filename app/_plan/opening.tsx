/** A plan on its way: its title at once, so that the page that follows it moves nothing that was read already. */
import type { ReactNode } from "react";
import styles from "./plan-page.module.css";

interface OpeningProps {
  readonly title: string;
  /** What stands in its way, if anything does. */
  readonly children?: ReactNode;
  readonly barred?: boolean;
}

export function Opening({ title, children, barred = false }: OpeningProps) {
  return (
    <main className={styles.opening}>
      <h1>{title.trim() || "Plan without a title"}</h1>
      {!barred && <p role="status">Opening the plan…</p>}
      {children}
    </main>
  );
}
