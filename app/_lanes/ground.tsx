"use client";
/** Behind the lanes: the minutes, the chosen item's time, the end of the slot, time that is free and time that is over. */
import { type Axis, type AxisSpan, boxOf } from "#lib/lanes/axis.ts";
import styles from "./lanes.module.css";

interface GroundProps {
  readonly axis: Axis;
  readonly total: number;
  readonly lengthSeconds: number;
  readonly chosen: AxisSpan | null;
}

export function Ground({ axis, total, lengthSeconds, chosen }: GroundProps) {
  const rest = { from: Math.min(total, lengthSeconds), to: axis.seconds };
  return (
    <div className={styles.ground} aria-hidden="true">
      {axis.ticks.map((tick) => (
        <span key={tick.second} className={styles.tick} style={{ left: tick.x }} />
      ))}
      {chosen && <span className={styles.chosen} style={place(axis, chosen)} />}
      {rest.to > rest.from && (
        <span className={total > lengthSeconds ? styles.over : styles.free} style={place(axis, rest)} />
      )}
      <span className={styles.slotEnd} style={{ left: lengthSeconds * axis.scale }} />
    </div>
  );
}

function place(axis: Axis, span: AxisSpan) {
  const { x, width } = boxOf(axis, span);
  return { left: x, width };
}

/** The minutes, over the lanes and again under them. */
export function Minutes({ axis }: { axis: Axis }) {
  return (
    <div className={styles.minutes} aria-hidden="true">
      <span className={styles.laneName}>minutes</span>
      <div className={styles.track} style={{ width: axis.width }}>
        {axis.ticks.map((tick) => (
          <span key={tick.second} className={styles.minute} style={{ left: tick.x }} data-edge={edge(axis, tick.x)}>
            {tick.label}
          </span>
        ))}
      </div>
    </div>
  );
}

/** A label at the very start or end of the axis stands inside it. */
function edge({ width }: Axis, x: number): "start" | "end" | undefined {
  if (x < 10) return "start";
  return x > width - 14 ? "end" : undefined;
}
