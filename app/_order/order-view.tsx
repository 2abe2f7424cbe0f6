"use client";
/** The two orders side by side, with all that speaks for the better one and against it. */
import { FindingList } from "#app/_parts/finding-list.tsx";
import { placedName } from "#app/_session/placed-name.ts";
import { changeWords } from "#lib/clock/length-words.ts";
import { clockTime } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import styles from "./order.module.css";
import { OrderColumn } from "./order-column.tsx";
import { OrderSavings } from "./order-savings.tsx";
import {
  dropPlannedWords,
  findingsComparedWords,
  holdCostWords,
  holdWords,
  NOTHING_HELD,
  nothingBetterWords,
  provenWords,
  REREAD_SET_UP_LINES,
  stalePlannedWords,
} from "./order-words.ts";
import type { OrderPreview } from "./preview.ts";

interface ViewProps {
  readonly plan: Plan;
  readonly preview: OrderPreview;
  /** Estimated seconds if no item were held; null where that saves nothing. */
  readonly unheld: number | null;
  readonly free: boolean;
  readonly setFree: (free: boolean) => void;
}

export function OrderView(props: ViewProps) {
  const { plan, preview } = props;
  const { order, moved, present, better } = preview;
  if (moved.length === 0) return <NothingBetter {...props} />;
  return (
    <>
      <OrderSavings preview={preview}>
        <p>{provenWords(order.proven)}</p>
        <Planned {...props} />
      </OrderSavings>
      <div className={styles.orders}>
        <OrderColumn title="As it is now" list={present} plan={plan} seconds={order.before} />
        <OrderColumn title="With fewer set-ups" list={better} plan={plan} seconds={order.after} marked />
      </div>
      <Held {...props} />
      <Findings {...props} />
    </>
  );
}

function NothingBetter(props: ViewProps) {
  const { order, present } = props.preview;
  const moves = present.lines.filter((line) => line.item.kind === "move").length;
  return (
    <>
      <p className="done">{nothingBetterWords(props.preview)}</p>
      <Held {...props} />
      {moves > 1 && <OrderColumn title="As it is now" list={present} plan={props.plan} seconds={order.before} />}
    </>
  );
}

/** What constrains the order, and what that costs. */
function Held({ plan, preview: { order }, unheld }: ViewProps) {
  if (order.heldBy.length === 0) return <p className="quiet">{NOTHING_HELD}</p>;
  const holds = [...new Set(order.heldBy.map((hold) => holdWords(plan, hold)))];
  return (
    <div>
      <h3 className={styles.small}>Items held in place</h3>
      <ul className={styles.plain}>
        {holds.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <p>{holdCostWords(order.after, unheld)}</p>
    </div>
  );
}

/** A planned change stays with its move, whatever comes before the move then. */
function Planned({ plan, preview, free, setFree }: ViewProps) {
  const { planned, clock } = preview;
  return (
    <>
      <p>
        On the clock the class takes <b className="mono">{clockTime(clock.before)}</b> now and{" "}
        <b className="mono">{clockTime(clock.after)}</b> then, {changeWords(clock.before, clock.after)}.
      </p>
      {planned.length > 0 && (
        <>
          <p>{stalePlannedWords(planned.map((item) => placedName(plan, item)))}</p>
          <label className="check">
            <input type="checkbox" checked={free} onChange={(event) => setFree(event.target.checked)} />
            {dropPlannedWords(planned.length)}
          </label>
        </>
      )}
    </>
  );
}

/** What the checks find in the new order and what they no longer find. */
function Findings({ preview: { findings } }: ViewProps) {
  const { added, gone } = findings;
  return (
    <div className={styles.upset}>
      <h3 className={styles.small}>Findings in the new order</h3>
      <p>{findingsComparedWords(findings)}</p>
      {added.length > 0 && (
        <>
          <p className="notice">{REREAD_SET_UP_LINES}</p>
          <h4>New</h4>
          <FindingList findings={added} />
        </>
      )}
      {gone.length > 0 && (
        <details>
          <summary>Gone</summary>
          <FindingList findings={gone} />
        </details>
      )}
    </div>
  );
}
