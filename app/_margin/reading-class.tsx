/**
 * The whole class as it is about to be signed, item by item, on one page: springs, the change into each move, and every
 * line in the words in which it will be said, live fields filled.
 */
import { nameOf } from "#app/_plan/words.ts";
import { type ClockRow, classClock } from "#lib/clock/clock.ts";
import { type ReadLine, readThrough } from "#lib/cues/read-through.ts";
import { isCueKind, KIND_WORDS } from "#lib/plan/cue-words.ts";
import { PLAN_DEFAULTS } from "#lib/plan/defaults.ts";
import { clockTime, plainNumber, springWords, tagWords } from "#lib/plan/format.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import styles from "./margin.module.css";

export function ReadingClass({ plan }: { readonly plan: Plan }) {
  const { rows, total } = classClock(plan);
  const { openingSeconds, closingSeconds } = { ...PLAN_DEFAULTS, ...plan };
  const { expected = [] } = plan;
  const { parts, talk } = readThrough(plan);
  const { said, aside } = talk;
  const rowOf = new Map(rows.map((row) => [row.item, row]));
  const linesOf = (item: PlanItem) => parts.flatMap((part) => (part.item.id === item.id ? part.lines : []));
  return (
    <>
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
      {plan.notes && (
        <div>
          <h3>Notes of the authors</h3>
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

/** What the floor will do and hear: it is what is signed. */
function Words({ plan, item, row, lines }: WordsProps) {
  if (item.kind === "heading") return null;
  const change = row ? (row.transition.planned ?? row.transition.estimate) : 0;
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
      <span className="quiet">{isCueKind(kind) ? KIND_WORDS[kind] : kind}</span> {text}
      {shortBy !== null && <span className={styles.aside}> set aside: {plainNumber(shortBy)} s short</span>}
    </p>
  );
}

const Figure = ({ name, value }: { readonly name: string; readonly value: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>{value}</dd>
  </div>
);
