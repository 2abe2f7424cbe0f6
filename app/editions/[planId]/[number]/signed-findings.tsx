/** What the rules found when it was signed: accepted with a reason, left open, and for information. */
import type { Finding } from "#lib/rules/define/types.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import type { AcceptedThere } from "#server/editions/editions.ts";
import { AcceptedFindings } from "../accepted-findings.tsx";
import styles from "../editions.module.css";

interface Props {
  readonly findings: readonly Finding[];
  readonly accepted: readonly AcceptedThere[];
}

export function SignedFindings({ findings, accepted }: Props) {
  const sentences = new Set(accepted.map(({ message }) => message));
  const open = findings.filter(({ level, message }) => level !== "info" && !sentences.has(message));
  const info = findings.filter(({ level }) => level === "info");
  return (
    <section className={styles.found} aria-labelledby="found">
      <h2 id="found">What the rules found</h2>
      {open.length === 0 && accepted.length === 0 && <p>Nothing to look at again.</p>}
      <AcceptedFindings accepted={accepted} />
      {open.length > 0 && <Messages findings={open} />}
      {info.length > 0 && (
        <details>
          <summary>
            {LEVEL_WORDS.info}: {info.length}
          </summary>
          <Messages findings={info} />
        </details>
      )}
    </section>
  );
}

const Messages = ({ findings }: { readonly findings: readonly Finding[] }) => (
  <ul className={styles.findings}>
    {findings.map(({ key, rule, message, level }) => (
      <li key={key ?? `${rule} ${message}`}>
        <p>
          {level !== "info" && <b className={level}>{LEVEL_WORDS[level]}: </b>}
          {message}
        </p>
      </li>
    ))}
  </ul>
);
