/** A plan while it opens: its title and the class in words, as the server sent them, until the page can be used. */
import type { ReactNode } from "react";
import type { OutlinePart } from "#lib/plan/outline.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import styles from "./opening.module.css";

interface OpeningProps {
  readonly title: string;
  readonly outline: readonly OutlinePart[];
  /** Why it cannot be opened, if it cannot. */
  readonly children?: ReactNode;
  readonly barred?: boolean;
}

export function Opening({ title, outline, children, barred = false }: OpeningProps) {
  return (
    <main className={styles.opening}>
      <h1>{planTitle(title)}</h1>
      {!barred && <p role="status">Opening the plan…</p>}
      {children}
      {!barred && outline.length > 0 && <InWords outline={outline} />}
    </main>
  );
}

/** To be read only. The page that takes its place can be changed and shows findings. */
function InWords({ outline }: Pick<OpeningProps, "outline">) {
  return (
    <section className={styles.outline} aria-label="The class in words">
      {outline.map(({ title, words }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: made once, never changed
        <div key={i}>
          {title !== undefined && <h2>{title}</h2>}
          {words !== "" && <p>{words}</p>}
        </div>
      ))}
    </section>
  );
}
