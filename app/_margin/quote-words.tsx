/** Words that are commented on, as they were when the comment was made. Live fields are shown by their names. */
import { FIELD_WORDS, isLiveField } from "#lib/editor/words.ts";
import type { LiveField } from "#lib/plan/schema.ts";
import styles from "./margin.module.css";

export function QuoteWords({ quote }: { readonly quote: string }) {
  const parts = quote.split(/(\{[a-z-]+\})/u);
  return (
    <blockquote className={styles.quote}>
      {parts.map((part, i) => {
        const name = part.slice(1, -1);
        if (!isLiveField(name)) return part;
        // biome-ignore lint/suspicious/noArrayIndexKey: the parts of a fixed text have no other name
        return <FieldWord key={i} name={name} />;
      })}
    </blockquote>
  );
}

const FieldWord = ({ name }: { readonly name: LiveField }) => (
  <span className={styles.quoteField}>{FIELD_WORDS[name]}</span>
);
