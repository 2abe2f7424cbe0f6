/** What the plan brought along in its file that differs from the studio, fact by fact, before it is signed. */
import type { FromFile } from "#lib/doc/from-file.ts";
import styles from "./margin.module.css";
import { FROM_FILE, fromFileName } from "./sign-off-words.ts";

export function FromFileView({ fromFile }: { readonly fromFile: readonly FromFile[] }) {
  if (fromFile.length === 0) return null;
  return (
    <section className="notice" aria-labelledby="from-file">
      <h3 id="from-file">{FROM_FILE.title}</h3>
      <p>{FROM_FILE.about}</p>
      <ul className={styles.fromFile}>
        {fromFile.map((part) => (
          <li key={`${part.kind} ${part.name}`}>
            <strong>{fromFileName(part)}</strong>
            {part.kind === "stranger" && FROM_FILE.stranger}
            {part.differences.length > 0 && (
              <ul>
                {part.differences.map(({ label, plan, studio }) => (
                  <li key={label}>
                    {label}: <b>{plan}</b> in this plan, <b>{studio}</b> in your studio
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
