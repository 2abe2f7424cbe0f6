/** What to mend on a day: the gravest in words, how many more there are, and the week's sum. */
import { plural } from "#lib/plan/format.ts";
import type { FindingLine, TideDay } from "#lib/tide/types.ts";
import styles from "./sheet.module.css";
import type { SheetHands } from "./sheet-types.ts";

/** Letters of a line that leave room for no more than a number beside it. */
const LONG_LINE = 22;

interface FindingLinesProps {
  readonly day: Pick<TideDay, "lines" | "week">;
  readonly hands: Pick<SheetHands, "onFinding">;
  readonly chosen: string | undefined;
  /** Lines lower than a target may be: Tab leads to the chosen finding's own "Next" instead. */
  readonly low?: boolean;
}

const LEVEL_WORDS = { must: "Must fix", look: "Look again", info: "For information" } as const;

export function FindingLines({ day: { lines, week }, hands, chosen, low = false }: FindingLinesProps) {
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
        tabIndex={low ? -1 : undefined}
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
          tabIndex={low ? -1 : undefined}
          aria-label={`${plural(lines.length - 1, "more finding")} on this day`}
          onClick={() => hands.onFinding(next.id)}
        >
          {shown.words.length > LONG_LINE ? `+${lines.length - 1}` : `and ${lines.length - 1} more`}
        </button>
      )}
      {week !== "" && <span className="visually-hidden">{week}</span>}
    </span>
  );
}
