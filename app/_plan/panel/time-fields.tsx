"use client";
/** The time of an item: its seconds by steps or typed; for a move its lock and its bounds. */
import { clockTime, plainNumber } from "#lib/plan/format.ts";
import { headSeconds, moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Pause } from "#lib/plan/schema.ts";
import { NumberField } from "../../_parts/number-field.tsx";
import styles from "../../_parts/panel.module.css";
import { setField, setItemSeconds, stepItemSeconds } from "../../_session/acts.ts";
import type { PlanSession } from "../../_session/session.ts";
import type { SessionSnapshot } from "../../_session/session-types.ts";
import { ITEM_WORDS } from "./panel-words.ts";

interface TimeFieldsProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly item: MoveItem | Pause;
  readonly readOnly: boolean;
}

export function TimeFields(props: TimeFieldsProps) {
  const { session, item, readOnly } = props;
  return (
    <div className={styles.time}>
      <div className={styles.stepper}>
        <Step {...props} by={-1} />
        <NumberField
          key={item.id}
          label={ITEM_WORDS.seconds}
          value={item.seconds}
          min={item.kind === "pause" ? 0 : 1}
          disabled={readOnly}
          onCommit={(seconds) => seconds !== undefined && setItemSeconds(session, item, seconds)}
        />
        <Step {...props} by={1} />
      </div>
      {item.kind === "move" && <Lock session={session} item={item} readOnly={readOnly} />}
    </div>
  );
}

/** One step of the plan's grid less or more. */
function Step({ session, snap, item, readOnly, by }: TimeFieldsProps & { by: 1 | -1 }) {
  const grid = plainNumber(headSeconds(snap.plan, "gridSeconds"));
  return (
    <button
      type="button"
      className="square-button"
      disabled={readOnly}
      aria-label={`${grid} seconds ${by === 1 ? "more" : "less"}`}
      onClick={() => stepItemSeconds(session, item, by)}
    >
      {by === 1 ? "+" : "−"}
    </button>
  );
}

function Lock({ session, item, readOnly }: Omit<TimeFieldsProps, "snap" | "item"> & { item: MoveItem }) {
  return (
    <label className="check">
      <input
        type="checkbox"
        checked={item.locked === true}
        disabled={readOnly}
        onChange={(event) => setField(session, item.id, "locked", event.target.checked || undefined)}
      />
      {ITEM_WORDS.lock}
    </label>
  );
}

/** The shortest and the longest that the fit may make it; left empty, the library's own. */
export function TimeBounds({ session, snap, item, readOnly }: TimeFieldsProps & { item: MoveItem }) {
  const usual = moveOf(snap.plan, item)?.seconds;
  const [low, high] = item.range ?? [undefined, undefined];
  const set = (shortest: number | undefined, longest: number | undefined) => {
    const none = shortest === undefined && longest === undefined;
    const from = shortest ?? usual?.[0] ?? Math.min(item.seconds, longest ?? item.seconds);
    const to = longest ?? usual?.[1] ?? Math.max(item.seconds, shortest ?? item.seconds);
    setField(session, item.id, "range", none ? undefined : [Math.min(from, to), Math.max(from, to)]);
  };
  const common = { min: 1, optional: true, disabled: readOnly };
  return (
    <div className={styles.pairOfFields}>
      <NumberField
        key={`${item.id}low`}
        label={ITEM_WORDS.shortest}
        value={low}
        placeholder={inShort(usual?.[0])}
        onCommit={(n) => set(n, high)}
        {...common}
      />
      <NumberField
        key={`${item.id}high`}
        label={ITEM_WORDS.longest}
        value={high}
        placeholder={inShort(usual?.[1])}
        onCommit={(n) => set(low, n)}
        {...common}
      />
    </div>
  );
}

const inShort = (seconds: number | undefined) =>
  seconds === undefined ? undefined : seconds < 120 ? plainNumber(seconds) : clockTime(seconds);
