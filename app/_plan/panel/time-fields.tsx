"use client";
/** The time of an item: its seconds by the grid or by hand; for a move whether it is locked, and its bounds. */
import { clockTime, plainNumber } from "#lib/plan/format.ts";
import { headSeconds, moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Pause } from "#lib/plan/schema.ts";
import { NumberField } from "../../_parts/number-field.tsx";
import styles from "../../_parts/panel.module.css";
import { stepSeconds } from "../../_rail/use-rail-keys.ts";
import { setField, setSeconds } from "../../_session/acts.ts";
import type { PlanSession } from "../../_session/session.ts";
import type { SessionSnapshot } from "../../_session/session-types.ts";

interface TimeFieldsProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly item: MoveItem | Pause;
  readonly readOnly: boolean;
}

export function TimeFields({ session, snap, item, readOnly }: TimeFieldsProps) {
  const grid = plainNumber(headSeconds(snap.plan, "gridSeconds"));
  return (
    <div className={styles.time}>
      <div className={styles.stepper}>
        <button
          type="button"
          className="square-button"
          disabled={readOnly}
          aria-label={`${grid} seconds less`}
          onClick={() => stepSeconds(session, item, -1)}
        >
          −
        </button>
        <NumberField
          key={item.id}
          label="Seconds"
          value={item.seconds}
          min={item.kind === "pause" ? 0 : 1}
          disabled={readOnly}
          onCommit={(seconds) => seconds !== undefined && setSeconds(session, item, seconds)}
        />
        <button
          type="button"
          className="square-button"
          disabled={readOnly}
          aria-label={`${grid} seconds more`}
          onClick={() => stepSeconds(session, item, 1)}
        >
          +
        </button>
      </div>
      {item.kind === "move" && (
        <label className="check">
          <input
            type="checkbox"
            checked={item.locked === true}
            disabled={readOnly}
            onChange={(event) => setField(session, item.id, "locked", event.target.checked || undefined)}
          />
          Keep this time
        </label>
      )}
    </div>
  );
}

/** Shortest and longest; left empty, the library's count. */
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
        label="Shortest"
        value={low}
        placeholder={say(usual?.[0])}
        onCommit={(n) => set(n, high)}
        {...common}
      />
      <NumberField
        key={`${item.id}high`}
        label="Longest"
        value={high}
        placeholder={say(usual?.[1])}
        onCommit={(n) => set(low, n)}
        {...common}
      />
    </div>
  );
}

const say = (seconds: number | undefined) =>
  seconds === undefined ? undefined : seconds < 120 ? plainNumber(seconds) : clockTime(seconds);
