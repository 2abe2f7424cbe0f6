"use client";
/**
 * The whole class at a glance: lanes over time, then the balance. It shows the same session as the rail, so the chosen item
 * is the same and what anybody writes shows at once. Printed, it is one landscape page in black on white.
 */
import { useEffect, useMemo, useRef } from "react";
import { BodyMap } from "#app/_body-map/body-map.tsx";
import { BalanceView } from "#app/_parts/balance/balance-view.tsx";
import { CAUTION_NOTE, nameOf } from "#app/_session/item-words.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { workShares } from "#lib/balance/balance.ts";
import { axisOf } from "#lib/lanes/axis.ts";
import type { ClassLanes } from "#lib/lanes/types.ts";
import { secondsWords } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import { LanesGrid } from "./lanes-grid.tsx";
import { LanesTools } from "./lanes-tools.tsx";
import { GUTTER } from "./metrics.ts";
import { NumberedNames } from "./numbered-names.tsx";
import { Paper } from "./paper.tsx";
import { Readout } from "./readout.tsx";
import { useGo } from "./use-go.ts";
import { useLanes } from "./use-lanes.ts";
import { usePrinting } from "./use-printing.ts";
import { useScrollKept } from "./use-scroll-kept.ts";
import { useWalk, type ZoomRun } from "./use-walk.ts";
import { useWidth } from "./use-width.ts";
import { useZoom } from "./use-zoom.ts";
import styles from "./whole-class.module.css";

interface WholeClassProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
}

export function WholeClass({ session, snap }: WholeClassProps) {
  const lanes = useLanes(snap);
  const printing = usePrinting();
  const [box, width] = useWidth<HTMLDivElement>();
  const go = useGo();
  const places = useMemo(() => new Map(snap.rows.map((row) => [row.item, row.start])), [snap.rows]);
  const goFromBalance = (id: string) => {
    go(id, false);
    session.say(`${nameById(snap, id)} chosen.`);
  };
  return (
    <div className={styles.whole}>
      <div ref={box} className={styles.measure} aria-hidden="true" />
      {printing && <Paper snap={snap} lanes={lanes} roomName={session.studio.roomName} />}
      {!printing && width > 0 && <OnScreen session={session} snap={snap} lanes={lanes} width={width} />}
      <div className={styles.offPaper}>
        <BalanceView
          plan={snap.plan}
          balance={snap.balance}
          map={<BodyMap shares={workShares(snap.balance)} layout="standing" />}
          nameOf={(id) => nameById(snap, id)}
          startOf={(id) => places.get(id) ?? 0}
          onGo={goFromBalance}
        />
      </div>
    </div>
  );
}

function nameById(snap: SessionSnapshot, id: string): string {
  const item = itemById(snap.plan, id);
  if (!item) return "";
  return item.kind === "move" && item.side !== "both"
    ? `${nameOf(snap.plan, item)}, ${item.side}`
    : nameOf(snap.plan, item);
}

interface OnScreenProps extends WholeClassProps {
  readonly lanes: ClassLanes;
  /** Pixels for the lanes and their names. */
  readonly width: number;
}

/** Below this width the lanes' names take less room, px. */
const NARROW_PX = 560;

function OnScreen({ session, snap, lanes, width }: OnScreenProps) {
  const gutter = width < NARROW_PX ? GUTTER.narrow : GUTTER.wide;
  const { zoom, run, axis } = useZoomedAxis(session.planId, lanes, width - gutter);
  const scroll = useRef<HTMLDivElement>(null);
  useScrollKept(scroll, { scale: zoom.scale, gutter, onPinch: zoom.step });
  useSaid(session, zoom.zoom === "fit" ? "The whole class is in view." : inViewWords(width - gutter, zoom.scale));
  const selected = snap.selectedId;
  const walk = useWalk({ lanes, axis, selected }, run);
  return (
    <>
      <LanesTools zoom={zoom} run={run}>
        <Readout over={walk.over} />
      </LanesTools>
      <div ref={scroll} className={styles.scroll} data-scroll>
        <LanesGrid {...{ lanes, axis, gutter, selected, walk }} equipment={snap.plan.equipment} paper={false} />
      </div>
      <p id="lanes-keys-hint" className="visually-hidden">
        Left and right go from item to item, up and down from lane to lane, Enter opens the item, question mark lists
        all keys.
      </p>
      <p className="small quiet">{CAUTION_NOTE}</p>
      <NumberedNames {...{ lanes, axis, selected }} />
    </>
  );
}

/** The axis of time at the width that is chosen, and the commands that choose it. `width`: pixels for the lanes. */
function useZoomedAxis(planId: string, { total, lengthSeconds, columns }: ClassLanes, width: number) {
  const seconds = Math.max(total, lengthSeconds);
  const items = columns.filter(({ item }) => item !== null).map(({ from, to }) => to - from);
  const zoom = useZoom({ planId, seconds, items, width: width - EDGE_PX });
  const axis = useMemo(() => axisOf({ total, lengthSeconds, scale: zoom.scale }), [total, lengthSeconds, zoom.scale]);
  const run: ZoomRun = { wider: () => zoom.step(1), narrower: () => zoom.step(-1), "all-in-view": zoom.fit };
  return { zoom, axis, run };
}

/** Left free at the right end for half the width of a mark, px. */
const EDGE_PX = 8;

const inViewWords = (px: number, scale: number): string => `About ${secondsWords(Math.round(px / scale))} in view.`;

/** Tells a screen reader how much is in view whenever that changes, but not when the view opens. */
function useSaid(session: PlanSession, words: string): void {
  const last = useRef(words);
  useEffect(() => {
    if (last.current === words) return;
    last.current = words;
    session.say(words);
  }, [session, words]);
}
