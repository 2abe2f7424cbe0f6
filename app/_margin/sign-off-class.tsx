/**
 * The whole class as it is about to be signed, item by item: springs, the change into each move, and every line in the words
 * in which it will be said, with live fields filled in.
 */
import { useMemo } from "react";
import { LatePlateFigure, SMALL_PX } from "#app/_parts/plate/late-plate-figure.tsx";
import { Plate } from "#app/_parts/plate/plate.tsx";
import { PlateActs } from "#app/_parts/plate/plate-acts.tsx";
import { type PlateFacts, platesOf } from "#app/_parts/plate/plate-facts.ts";
import { Seconds } from "#app/_parts/seconds.tsx";
import { changeActs } from "#app/_session/change-acts.ts";
import { nameOf } from "#app/_session/item-words.ts";
import { lineKindWords, setAsideWords } from "#app/_session/line-words.ts";
import { type ClockRow, classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import { type ReadLine, readThrough } from "#lib/cues/read-through.ts";
import { tenth } from "#lib/numbers/round.ts";
import { PLAN_DEFAULTS } from "#lib/plan/defaults.ts";
import { clockTime, tagWords } from "#lib/plan/format.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { type PlateChange, plateChanges } from "#lib/plan-diff/plate-changes.ts";
import styles from "./margin.module.css";

interface SignOffClassProps {
  readonly plan: Plan;
  /** Its items as this person last read them: what is different is marked. */
  readonly read?: readonly PlanItem[] | undefined;
}

export function SignOffClass({ plan, read }: SignOffClassProps) {
  const track = useMemo(() => cueTrack(plan), [plan]);
  const { rows, total } = classClock(plan);
  const { openingSeconds, closingSeconds } = { ...PLAN_DEFAULTS, ...plan };
  const { parts, talk } = readThrough(plan, track);
  const rowOf = new Map(rows.map((row) => [row.item, row]));
  const factsOf = platesOf(plan, { rows, cues: track.cues, dropped: track.dropped });
  const acts = changeActs(plan);
  const changes = plateChanges(read ?? plan.items, plan.items);
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
          <SignedItem
            key={item.id}
            {...{ plan, item, factsOf }}
            row={rowOf.get(item.id)}
            acts={acts.get(item.id) ?? []}
            change={changes.get(item.id)}
            lines={parts.flatMap((part) => (part.item.id === item.id ? part.lines : []))}
          />
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
  <li className={styles.still}>
    <time>{clockTime(at)}</time>
    <span>{name}</span>
    <span className="mono">{seconds} s</span>
  </li>
);

interface SignedItemProps {
  readonly plan: Plan;
  readonly item: PlanItem;
  readonly row: ClockRow | undefined;
  readonly factsOf: (item: MoveItem) => PlateFacts;
  readonly acts: readonly string[];
  readonly change: PlateChange | undefined;
  readonly lines: readonly ReadLine[];
}

/** A plate with the change before it and its lines under it: what the floor will show and the coach will say. */
function SignedItem({ plan, item, row, factsOf, acts, change, lines }: SignedItemProps) {
  const start = row?.start ?? 0;
  if (item.kind !== "move") return <StillItem {...{ plan, item, start, change }} />;
  const facts = factsOf(item);
  const seconds = row ? tenth(row.start - row.transitionFrom) : 0;
  return (
    <li>
      {(seconds > 0 || acts.length > 0) && (
        <div className={styles.bare}>
          <b>
            <Seconds value={seconds} /> to change
          </b>
          <PlateActs acts={acts} />
        </div>
      )}
      <Plate {...{ facts, change }} density="small" at={start} figure={<LatePlateFigure {...facts} px={SMALL_PX} />} />
      <div className={styles.signed}>
        {lines.map((line) => (
          <Line key={line.key} line={line} />
        ))}
      </div>
    </li>
  );
}

interface StillProps extends Pick<SignedItemProps, "plan" | "change"> {
  readonly item: Exclude<PlanItem, MoveItem>;
  readonly start: number;
}

/** A heading or a pause. */
function StillItem({ plan, item, start, change }: StillProps) {
  return (
    <li className={styles.still}>
      <time>{clockTime(start)}</time>
      <span>
        {item.kind === "heading" ? <strong>{nameOf(plan, item)}</strong> : nameOf(plan, item)}
        {change && <b className={styles.changed}>{change.added ? "new" : "changed"}</b>}
      </span>
      <span className="mono">{item.kind === "heading" ? "" : `${item.seconds} s`}</span>
    </li>
  );
}

function Line({ line: { kind, text, shortBy } }: { readonly line: ReadLine }) {
  return (
    <p data-kind={kind}>
      <span className={styles.kind}>{lineKindWords(kind)} </span>
      <span>
        {text}
        {shortBy !== null && <span className={styles.aside}> {setAsideWords(shortBy)}</span>}
      </span>
    </p>
  );
}

const Figure = ({ name, value }: { readonly name: string; readonly value: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>{value}</dd>
  </div>
);
