/** A plan on its way: its title and the class in words, from the server, until the page itself can be used. */
import type { ReactNode } from "react";
import type { OutlinePart } from "#lib/plan/outline.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import styles from "./opening.module.css";

interface OpeningProps {
  readonly title: string;
  readonly outline: readonly OutlinePart[];
  /** What stands in its way, if anything does. */
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

/** It cannot be changed and says nothing of what is wrong: the page that follows does both. */
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
