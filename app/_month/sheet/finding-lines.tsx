/** What to mend on a day: the gravest in words, how many more there are, and the week's sum. */
import { plural } from "#lib/plan/format.ts";
import type { FindingLine, TideDay } from "#lib/tide/types.ts";
import styles from "./sheet.module.css";
import type { SheetHands } from "./sheet-types.ts";

interface FindingLinesProps {
  readonly day: Pick<TideDay, "lines" | "week">;
  readonly hands: Pick<SheetHands, "onFinding">;
  readonly chosen: string | undefined;
}

const LEVEL_WORDS = { must: "Must fix", look: "Look again", info: "For information" } as const;

export function FindingLines({ day: { lines, week }, hands, chosen }: FindingLinesProps) {
  const has = ({ findings }: FindingLine) => findings.some(({ id }) => id === chosen);
  const shown = lines.find(has) ?? lines[0];
  if (!shown) return week === "" ? null : <span className={styles.week}>{week}</span>;
  const at = lines.indexOf(shown);
  const next = lines[(at + 1) % lines.length];
  return (
    <span className={styles.findings}>
      <button
        type="button"
        className={styles.finding}
        data-level={shown.level}
        aria-pressed={has(shown)}
        onClick={() => hands.onFinding(shown.id)}
      >
        <span className={styles.sign} aria-hidden="true" />
        <span className="visually-hidden">{LEVEL_WORDS[shown.level]}: </span>
        {shown.words}
      </button>
      {next && lines.length > 1 && (
        <button
          type="button"
          className={styles.more}
          aria-label={`${plural(lines.length - 1, "more finding")} on this day`}
          onClick={() => hands.onFinding(next.id)}
        >
          and {lines.length - 1} more
        </button>
      )}
      {week !== "" && <span className="visually-hidden">{week}</span>}
    </span>
  );
}
