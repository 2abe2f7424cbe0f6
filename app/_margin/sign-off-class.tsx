/**
 * The whole class as it is about to be signed, item by item: springs, the change into each move, and every line in the words
 * in which it will be said, with live fields filled in.
 */
import { nameOf } from "#app/_session/item-words.ts";
import { lineKindWords, setAsideWords } from "#app/_session/line-words.ts";
import { type ClockRow, classClock } from "#lib/clock/clock.ts";
import { type ReadLine, readThrough } from "#lib/cues/read-through.ts";
import { tenth } from "#lib/numbers/round.ts";
import { PLAN_DEFAULTS } from "#lib/plan/defaults.ts";
import { clockTime, springWords, tagWords } from "#lib/plan/format.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import styles from "./margin.module.css";

export function SignOffClass({ plan }: { readonly plan: Plan }) {
  const { rows, total } = classClock(plan);
  const { openingSeconds, closingSeconds } = { ...PLAN_DEFAULTS, ...plan };
  const { parts, talk } = readThrough(plan);
  const rowOf = new Map(rows.map((row) => [row.item, row]));
  const linesOf = (item: PlanItem) => parts.flatMap((part) => (part.item.id === item.id ? part.lines : []));
  return (
    <>
      <Summary plan={plan} total={total} said={talk.said} aside={talk.aside} />
      {plan.notes && (
        <div>
          <h3>Notes for the team</h3>
          <p className={styles.asWritten}>{plan.notes}</p>
        </div>
      )}
      <ol className={styles.contents} aria-label="Item by item">
        <EndRow name="Opening" at={0} seconds={openingSeconds} />
        {plan.items.map((item) => (
          <li key={item.id}>
            <time>{clockTime(rowOf.get(item.id)?.start ?? 0)}</time>
            <span>
              {item.kind === "heading" ? <strong>{nameOf(plan, item)}</strong> : nameOf(plan, item)}
              {item.kind === "move" && (item.side === "left" || item.side === "right") && `, ${item.side}`}
            </span>
            <span className="mono">{item.kind === "heading" ? "" : `${item.seconds} s`}</span>
            <Words plan={plan} item={item} row={rowOf.get(item.id)} lines={linesOf(item)} />
          </li>
        ))}
        <EndRow name="Closing" at={total - closingSeconds} seconds={closingSeconds} />
      </ol>
    </>
  );
}

interface SummaryProps {
  readonly plan: Plan;
  /** Seconds of the class. */
  readonly total: number;
  /** How many lines are said, and how many are set aside. */
  readonly said: number;
  readonly aside: number;
}

function Summary({ plan, total, said, aside }: SummaryProps) {
  const { expected = [] } = plan;
  return (
    <dl className={styles.summary}>
      <Figure name="title" value={plan.title || "Untitled"} />
      {plan.theme && <Figure name="theme" value={plan.theme.name} />}
      {plan.level && <Figure name="level" value={tagWords(plan.level)} />}
      {expected.length > 0 && <Figure name="expected in the room" value={expected.map(tagWords).join(", ")} />}
      <Figure name="runs" value={`${clockTime(total)} of ${clockTime(plan.lengthSeconds)}`} />
      <Figure name="moves" value={String(plan.items.filter((item) => item.kind === "move").length)} />
      <Figure name="lines said" value={String(said)} />
      {aside > 0 && <Figure name="lines set aside" value={String(aside)} />}
    </dl>
  );
}

const EndRow = ({ name, at, seconds }: { readonly name: string; readonly at: number; readonly seconds: number }) => (
  <li>
    <time>{clockTime(at)}</time>
    <span>{name}</span>
    <span className="mono">{seconds} s</span>
  </li>
);

interface WordsProps {
  readonly plan: Plan;
  readonly item: PlanItem;
  readonly row: ClockRow | undefined;
  readonly lines: readonly ReadLine[];
}

/** What the floor will show and the coach will say: this is what is signed. */
function Words({ plan, item, row, lines }: WordsProps) {
  if (item.kind === "heading") return null;
  const change = row ? tenth(row.start - row.transitionFrom) : 0;
  return (
    <div className={styles.signed}>
      {item.kind === "move" && (
        <p className="quiet small">
          {springWords(plan.equipment, item.springs)}
          {change > 0 && ` · ${change} s to change`}
        </p>
      )}
      {item.kind === "pause" && item.text && <p className="small">{item.text}</p>}
      {lines.map((line) => (
        <Line key={line.key} line={line} />
      ))}
    </div>
  );
}

function Line({ line: { kind, text, shortBy } }: { readonly line: ReadLine }) {
  return (
    <p className="small">
      <span className="quiet">{lineKindWords(kind)}</span> {text}
      {shortBy !== null && <span className={styles.aside}> {setAsideWords(shortBy)}</span>}
    </p>
  );
}

const Figure = ({ name, value }: { readonly name: string; readonly value: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>{value}</dd>
  </div>
);
