"use client";
/** Behind the items: the steel lines, the clock at their left, the changes in the gaps, opening, closing, length. */
import { tenth } from "#lib/numbers/round.ts";
import { clockTime, secondsWords } from "#lib/plan/format.ts";
import { freeSpot } from "#lib/rail/drag.ts";
import { type RailLayout, type RailSegment, segmentOf } from "#lib/rail/layout.ts";
import { PlateActs } from "../_parts/plate/plate-acts.tsx";
import { Seconds } from "../_parts/seconds.tsx";
import { useChangeActs } from "../_session/change-acts.ts";
import { doTellWords } from "../_session/item-words.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";
import styles from "./rail.module.css";
import type { DragPreview } from "./use-rail-drag.ts";

interface GroundProps {
  readonly snap: SessionSnapshot;
  readonly layout: RailLayout;
  readonly drawn: readonly RailSegment[];
  readonly preview: DragPreview | null;
  readonly measure: (key: string) => (element: HTMLElement | null) => void;
}

const NO_ACTS: readonly string[] = [];

/** Height of a clock label at the left, px. */
const LABEL_PX = 20;

export function RailGround({ snap, layout, drawn, preview, measure }: GroundProps) {
  const acts = useChangeActs(snap.plan);
  return (
    <>
      <Steel layout={layout} />
      {drawn.map((s) => (
        <Ground key={s.key} segment={s} snap={snap} acts={acts.get(s.item ?? "") ?? NO_ACTS} measure={measure} />
      ))}
      <LengthLine snap={snap} layout={layout} />
      {preview?.kind === "place" && <DropLine layout={layout} after={preview.after} />}
    </>
  );
}

/** The two lines of the rail: solid where there is class, dotted where time is free, dashed where the class is too long. */
function Steel({ layout }: { layout: RailLayout }) {
  const last = layout.segments.at(-1);
  const worked = last?.kind === "free" ? last.top : layout.height;
  const inTime = Math.min(worked, layout.lengthY);
  return (
    <div className={styles.steel} aria-hidden="true">
      <span style={{ top: 0, height: inTime }} />
      {worked > inTime && <span data-part="over" style={{ top: inTime, height: worked - inTime }} />}
      {last?.kind === "free" && <span data-part="free" style={{ top: last.top, height: last.height }} />}
    </div>
  );
}

interface SegmentProps {
  readonly segment: RailSegment;
  readonly snap: SessionSnapshot;
  readonly acts: readonly string[];
  readonly measure: GroundProps["measure"];
}

type GapProps = Omit<SegmentProps, "measure"> & { readonly measure: (element: HTMLElement | null) => void };

function Ground({ segment, snap, acts, measure }: SegmentProps) {
  const { kind, top, height } = segment;
  if (kind === "heading") return null;
  if (kind === "move" || kind === "pause") return <ClockLabel top={top} seconds={segment.from} tick />;
  return (
    <>
      {kind === "opening" && <ClockLabel top={top} seconds={0} />}
      {kind === "closing" && <ClockLabel top={top} seconds={segment.from} />}
      <div className={styles.ground} data-kind={kind} style={{ top, height }}>
        {kind === "gap" ? (
          <Gap segment={segment} snap={snap} acts={acts} measure={measure(segment.key)} />
        ) : (
          <span className={styles.gap} ref={measure(segment.key)}>
            <b>
              <Seconds value={segment.to - segment.from} />
            </b>
            {kind}
          </span>
        )}
      </div>
    </>
  );
}

/** The change into a move: its seconds between the rails, then its acts in order, then how long people take for them. */
function Gap({ segment, snap, acts, measure }: GapProps) {
  const row = snap.rows.find((r) => r.item === segment.item);
  if (!row) return null;
  const { planned, estimate, telling } = row.transition;
  const seconds = tenth(row.start - row.transitionFrom);
  if (seconds === 0 && estimate === 0 && telling === 0) return null;
  const needs = Math.max(estimate, telling);
  const short = planned !== null && planned < needs;
  const apart = doTellWords(row.transition);
  return (
    <span className={styles.gap} ref={measure} title={apart} data-short={short || undefined}>
      <b data-planned={planned !== null || undefined}>
        <Seconds value={seconds} />
      </b>
      <PlateActs acts={acts} />
      <span className={styles.takes}>
        {planned === null ? (telling > estimate ? apart : "estimated") : short ? `takes ${apart}` : takesWords(needs)}
      </span>
    </span>
  );
}

const takesWords = (seconds: number): string =>
  seconds > 0 ? `planned, takes about ${secondsWords(seconds)}` : "planned";

function ClockLabel({ top, seconds, tick = false }: { top: number; seconds: number; tick?: boolean }) {
  return (
    <span className={styles.clock} data-tick={tick || undefined} style={{ top }}>
      {clockTime(seconds)}
    </span>
  );
}

/** Where the class has to end: across the items when it is too long, at the foot when there is time left. */
function LengthLine({ snap, layout }: { snap: SessionSnapshot; layout: RailLayout }) {
  const over = snap.total > snap.plan.lengthSeconds;
  const taken = layout.segments
    .filter((s) => s.kind === "move" || s.kind === "pause" || s.kind === "closing" || s.kind === "opening")
    .map((s) => ({ top: s.top, height: LABEL_PX, seconds: s.from }));
  const wanted = { top: layout.lengthY - LABEL_PX / 2, height: LABEL_PX, seconds: snap.plan.lengthSeconds };
  const label = freeSpot(wanted, taken);
  return (
    <>
      <span
        className={styles.lengthLine}
        data-over={over || undefined}
        style={{ top: layout.lengthY }}
        aria-hidden="true"
      />
      <span className={styles.lengthLabel} data-over={over || undefined} style={{ top: label }}>
        {over && <span className="visually-hidden">The class should end at </span>}
        {clockTime(snap.plan.lengthSeconds)}
      </span>
    </>
  );
}

function DropLine({ layout, after }: { layout: RailLayout; after: string | null }) {
  const segment = after === null ? layout.segments[0] : segmentOf(layout, after);
  return segment ? (
    <span className={styles.dropLine} style={{ top: segment.top + segment.height }} aria-hidden="true" />
  ) : null;
}
