/** Every key of the product, from the tables that handle them. */
import type { Metadata } from "next";
import styles from "../help.module.css";
import { BackToHelp, HelpFrame } from "../help-frame.tsx";
import { ALL_KEYS } from "../named-keys.ts";

export const metadata: Metadata = { title: "Help: Keys" };

export default function KeysPage() {
  return (
    <HelpFrame>
      <BackToHelp />
      <h1>Keys</h1>
      <p className={styles.about}>
        A single letter counts while no text is typed. Everything can be done without a key too: by its button.
      </p>
      {ALL_KEYS.map(({ title, parts }) => (
        <section key={title} aria-label={title}>
          <h2>{title}</h2>
          {parts.map((part) => (
            <div key={part.title} className={styles.keys}>
              <h3>{part.title}</h3>
              <dl>
                {part.keys.map(([key, what]) => (
                  <div key={`${key} ${what}`}>
                    <dt>
                      <kbd>{key}</kbd>
                    </dt>
                    <dd>{what}</dd>
                  </div>
                ))}
              </dl>
            </div>
          ))}
        </section>
      ))}
    </HelpFrame>
  );
}
