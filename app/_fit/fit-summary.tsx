/** What the fit does to the class as a whole, in two figures and a few sentences. */
import { againstLength } from "#lib/clock/length-words.ts";
import { clockTime } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import styles from "./fit.module.css";
import { closingWords, costWords, NO_NEW_FINDINGS, newFindingsWords, nothingToChangeWords } from "./fit-words.ts";
import { changesAnything, type FitPreview } from "./preview.ts";

export function FitSummary({ plan, preview }: { readonly plan: Plan; readonly preview: FitPreview }) {
  const { before, length, fit } = preview;
  if (!fit.possible) return null;
  if (!changesAnything(preview)) return <p className="done">{nothingToChangeWords(preview)}</p>;
  const closing = closingWords(preview);
  return (
    <div className={styles.summary}>
      <dl className={styles.figures}>
        <div>
          <dt>The class now</dt>
          <dd>{clockTime(before)}</dd>
          <dd className={styles.says} data-over={before > length || undefined}>
            {againstLength(before, length)}
          </dd>
        </div>
        <div>
          <dt>With these times</dt>
          <dd>{clockTime(fit.total)}</dd>
          <dd className={styles.says}>{againstLength(fit.total, length)}</dd>
        </div>
      </dl>
      <p>{costWords(plan, preview)}</p>
      {closing && <p>{closing}</p>}
      <NewFindings found={preview.found} />
    </div>
  );
}

/** Findings listed one by one; the rest are counted. */
const MOST_LISTED = 3;

/** Findings that these times would bring: better read before they are taken than after. */
function NewFindings({ found }: { readonly found: readonly Finding[] }) {
  if (found.length === 0) return <p>{NO_NEW_FINDINGS}</p>;
  const more = found.length - MOST_LISTED;
  return (
    <div>
      <p>{newFindingsWords(found.length)}</p>
      <ul className={styles.found}>
        {found.slice(0, MOST_LISTED).map(({ key, rule, message }) => (
          <li key={key ?? rule}>{message}</li>
        ))}
        {more > 0 && <li>{`and ${more} more`}</li>}
      </ul>
    </div>
  );
}
