/** What the plan brought along in its file and does otherwise than the studio, fact by fact, before it is signed. */
import type { FromFile } from "#lib/doc/from-file.ts";
import styles from "./margin.module.css";

export function FromFileView({ fromFile }: { readonly fromFile: readonly FromFile[] }) {
  if (fromFile.length === 0) return null;
  return (
    <section className="notice" aria-labelledby="from-file">
      <h3 id="from-file">Not as in your studio</h3>
      <p>This plan came from a file and keeps what the file says. The findings below go by that:</p>
      <ul className={styles.fromFile}>
        {fromFile.map((part) => (
          <li key={`${part.kind} ${part.name}`}>
            <strong>{part.kind === "machines" ? `The machines: ${part.name}` : part.name}</strong>
            {part.kind === "stranger" && ": your library does not have this move, so nothing compares it."}
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
