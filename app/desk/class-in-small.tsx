/**
 * A class on its rail in small: its moves by pattern, the bare rail where people change, and the stop it has to reach. An hour
 * fills the width. Decoration: its length is beside it in words.
 */
import { tintOf } from "#app/_parts/plate/tint.ts";
import { readStrip, type StripPart } from "#lib/clock/class-strip.ts";
import styles from "./desk.module.css";

/** Seconds of the whole width. A longer class is drawn to a scale of its own. */
const WHOLE_SECONDS = 3600;
const HEIGHT = 28;

interface ClassInSmallProps {
  /** As the last check stored it; null before that. */
  readonly strip: string | null;
  readonly lengthSeconds: number;
}

export function ClassInSmall({ strip, lengthSeconds }: ClassInSmallProps) {
  const parts = readStrip(strip ?? "");
  const end = parts.reduce((latest, { from, seconds }) => Math.max(latest, from + seconds), lengthSeconds);
  const whole = Math.max(WHOLE_SECONDS, end);
  return (
    <svg className={styles.small} viewBox={`0 0 ${whole} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
      <path className={styles.rails} d={`M0 8H${lengthSeconds}M0 20H${lengthSeconds}`} />
      {[...byTint(parts)].map(([tint, d]) => (
        <path key={tint} className={styles.plates} data-ground={tint} d={d} />
      ))}
      <path className={styles.stop} d={`M${lengthSeconds} 0V${HEIGHT}`} />
    </svg>
  );
}

/** One path a tint: a list of many plans stays small. */
function byTint(parts: readonly StripPart[]): ReadonlyMap<string, string> {
  const paths = new Map<string, string>();
  for (const { from, seconds, pattern } of parts) {
    const tint = tintOf(pattern ? { pattern } : undefined);
    paths.set(tint, `${paths.get(tint) ?? ""}M${from} 3h${seconds}v${HEIGHT - 6}h-${seconds}z`);
  }
  return paths;
}
