/** What was found, by kind, with the words that were looked for marked. */
import { markedParts, type SoughtWord } from "#lib/find/words.ts";
import styles from "./find.module.css";
import type { FoundEntry, FoundGroup } from "./groups.ts";

interface FoundGroupsProps {
  readonly groups: readonly FoundGroup[];
  readonly asked: readonly SoughtWord[];
}

export function FoundGroups({ groups, asked }: FoundGroupsProps) {
  return groups.map(({ title, entries, more }) => (
    <section key={title} className={styles.group} aria-label={title}>
      <h3>
        {title} {more && <span className="quiet small">{more}</span>}
      </h3>
      <ul>
        {entries.map((entry) => (
          <Entry key={entry.href} entry={entry} asked={asked} />
        ))}
      </ul>
    </section>
  ));
}

function Entry({ entry, asked }: { readonly entry: FoundEntry; readonly asked: readonly SoughtWord[] }) {
  const { href, title, beside, under, lines } = entry;
  return (
    <li>
      <a className={styles.entry} href={href}>
        <b>
          <Marked text={title} asked={asked} />
        </b>
        {beside && <span className="quiet small">{beside}</span>}
        {under && (
          <span className={styles.under}>
            <Marked text={under} asked={asked} />
          </span>
        )}
      </a>
      {lines.map((line) => (
        <a key={`${line.href} ${line.text}`} className={styles.line} href={line.href}>
          <span className="quiet small">{line.words}</span> <Marked text={line.text} asked={asked} />
        </a>
      ))}
    </li>
  );
}

function Marked({ text, asked }: { readonly text: string; readonly asked: readonly SoughtWord[] }) {
  let at = 0;
  return markedParts(text, asked).map((part) => {
    const key = at;
    at += part.text.length;
    return part.found ? (
      <mark key={key} className={styles.mark}>
        {part.text}
      </mark>
    ) : (
      part.text
    );
  });
}
