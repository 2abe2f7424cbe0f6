/** The words a comment is about, as they were when it was made. Live fields show what they say now. */
import { readerOf } from "#lib/cues/as-read.ts";
import { quotePieces } from "#lib/margin/quote.ts";
import { FIELD_WORDS } from "#lib/plan/cue-words.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { LiveField, Plan } from "#lib/plan/schema.ts";
import styles from "./threads.module.css";

interface Props {
  readonly quote: string;
  readonly plan: Plan;
  /** The item of the script. While it is taken out, live fields show their names. */
  readonly itemId: string;
}

export function QuoteWords(props: Props) {
  return (
    <blockquote className={styles.quote}>
      <Pieces {...props} />
    </blockquote>
  );
}

/** The same, inside a sentence. */
export function Pieces({ quote, plan, itemId }: Props) {
  return quotePieces(quote, sayField(plan, itemId)).map(({ text, field }, i) =>
    field ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of a fixed text have no other key
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
  // After a comma, so that it does not begin with the capital of a line.
  return (field) => asRead(item, `, {${field}}`).slice(2);
}
