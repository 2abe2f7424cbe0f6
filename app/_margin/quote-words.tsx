/** Words that are commented on, as they were when the comment was made; live fields by what they say now. */
import { readerOf } from "#lib/cues/as-read.ts";
import { quotePieces } from "#lib/margin/quote.ts";
import { FIELD_WORDS } from "#lib/plan/cue-words.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { LiveField, Plan } from "#lib/plan/schema.ts";
import styles from "./margin.module.css";

interface Props {
  readonly quote: string;
  readonly plan: Plan;
  /** Whose script the words stand in; while it is taken out, fields are shown by their names. */
  readonly itemId: string;
}

export function QuoteWords(props: Props) {
  return (
    <blockquote className={styles.quote}>
      <Pieces {...props} />
    </blockquote>
  );
}

/** The same inside a sentence. */
export function Pieces({ quote, plan, itemId }: Props) {
  return quotePieces(quote, sayField(plan, itemId)).map(({ text, field }, i) =>
    field ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the parts of a fixed text have no other name
      <span key={i} className={styles.quoteField} title={`live field: ${FIELD_WORDS[field]}`}>
        {text}
      </span>
    ) : (
      text
    ),
  );
}

function sayField(plan: Plan, itemId: string): (field: LiveField) => string {
  const item = itemById(plan, itemId);
  if (item?.kind !== "move") return (field) => FIELD_WORDS[field];
  const asRead = readerOf(plan);
  // As a word among others: what begins a line with a capital is a matter of the line.
  return (field) => asRead(item, `, {${field}}`).slice(2);
}
