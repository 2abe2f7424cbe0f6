"use client";
/** The two orders side by side with all that speaks for the better one, and all that speaks against it. */
import { FindingList } from "#app/_margin/finding-list.tsx";
import { placedName } from "#app/_plan/placed-name.ts";
import { changeWords } from "#lib/clock/length-words.ts";
import { clockTime, plural, secondsWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import styles from "./order.module.css";
import { OrderColumn } from "./order-column.tsx";
import type { OrderPreview } from "./preview.ts";
import { Saved } from "./saved.tsx";
import { holdWords, provenWords } from "./words.ts";

interface ViewProps {
  readonly plan: Plan;
  readonly preview: OrderPreview;
  /** Estimated seconds if nothing held any item; null where that saves nothing. */
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
      <Saved preview={preview}>
        <p>{provenWords(order.proven)}</p>
        <Planned {...props} />
      </Saved>
      <div className={styles.orders}>
        <OrderColumn title="As it stands" list={present} plan={plan} seconds={order.before} />
        <OrderColumn title="With fewer set-ups" list={better} plan={plan} seconds={order.after} marked />
      </div>
      <Held {...props} />
      <Upset {...props} />
    </>
  );
}

function NothingBetter(props: ViewProps) {
  const { order, present } = props.preview;
  const moves = present.lines.filter((line) => line.item.kind === "move").length;
  const say =
    moves < 2
      ? "This block has fewer than two moves: there is nothing to put in order."
      : order.proven
        ? `No other order takes fewer seconds: its changes take ${secondsWords(order.before)}, and every order that may be was looked at.`
        : `Nothing better was found: its changes take ${secondsWords(order.before)}. The block is too long to try every order.`;
  return (
    <>
      <p className="done">{say}</p>
      <Held {...props} />
      {moves > 1 && <OrderColumn title="As it stands" list={present} plan={props.plan} seconds={order.before} />}
    </>
  );
}

/** What constrains the order, and what it costs. */
function Held({ plan, preview: { order }, unheld }: ViewProps) {
  if (order.heldBy.length === 0) return <p className="quiet">Nothing holds any item of this block to its place.</p>;
  const holds = [...new Set(order.heldBy.map((hold) => holdWords(plan, hold)))];
  return (
    <div>
      <h3 className={styles.small}>What holds items in their order</h3>
      <ul className={styles.plain}>
        {holds.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <p>
        {unheld === null
          ? "That costs no seconds of set-up."
          : `Without that, ${secondsWords(order.after - unheld)} less would do: ${secondsWords(unheld)}.`}
      </p>
    </div>
  );
}

/** Planned changes go with their move, whatever stands before it then. */
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
          <p>
            {plural(planned.length, "change has", "changes have")} a planned time that was meant for another change:{" "}
            {planned.map((item) => placedName(plan, item)).join("; ")}.
          </p>
          <label className="check">
            <input type="checkbox" checked={free} onChange={(event) => setFree(event.target.checked)} />
            {planned.length === 1
              ? "Drop this planned time, so that its estimate counts"
              : "Drop these planned times, so that the estimates count"}
          </label>
        </>
      )}
    </>
  );
}

/** What else moving may upset: the findings of the plan in the new order. */
function Upset({ preview: { findings } }: ViewProps) {
  const { before, after, added, gone } = findings;
  return (
    <div className={styles.upset}>
      <h3 className={styles.small}>What the checks say then</h3>
      <p>
        {`${plural(before, "finding")} now, ${after} in the new order: ${countWords(added, "new")}, ${countWords(gone, "gone")}.`}
      </p>
      {added.length > 0 && (
        <>
          <p className="notice">
            Read the set-up lines again after taking it: what they say comes next may be something else.
          </p>
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

/** "none new", "3 gone", "4 new (1 must fix)". */
function countWords(findings: readonly Finding[], what: string): string {
  const must = findings.filter((finding) => finding.level === "must").length;
  return `${findings.length === 0 ? "none" : findings.length} ${what}${must > 0 ? ` (${must} must fix)` : ""}`;
}
