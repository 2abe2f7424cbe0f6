/** What the fit does to the class as a whole, in two figures and two sentences. */
import { againstLength } from "#lib/clock/length-words.ts";
import { clockTime, plural } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import styles from "./fit.module.css";
import { changesAnything, type FitPreview } from "./preview.ts";
import { closingWords, costWords } from "./words.ts";

export function FitSummary({ plan, preview }: { readonly plan: Plan; readonly preview: FitPreview }) {
  const { before, length, fit } = preview;
  if (!fit.possible) return null;
  if (!changesAnything(preview)) {
    return (
      <p className="done">
        Nothing to change: the class takes {clockTime(before)} of {clockTime(length)}, to the second, and no other times
        are nearer to yours.
      </p>
    );
  }
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
      <Found found={preview.found} />
    </div>
  );
}

/** Findings told one by one; the rest are counted. */
const TOLD = 3;

/** What these times would bring: better read before they are taken than after. */
function Found({ found }: { readonly found: readonly Finding[] }) {
  if (found.length === 0) return <p>The checks find nothing with these times that they do not find now.</p>;
  const more = found.length - TOLD;
  return (
    <div>
      <p>{`The checks would find ${plural(found.length, "thing")} more:`}</p>
      <ul className={styles.found}>
        {found.slice(0, TOLD).map(({ key, rule, message }) => (
          <li key={key ?? rule}>{message}</li>
        ))}
        {more > 0 && <li>{`and ${more} more`}</li>}
      </ul>
    </div>
  );
}
