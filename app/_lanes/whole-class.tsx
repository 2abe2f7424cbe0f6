"use client";
/**
 * The whole class at a glance: lanes over time, then the balance. The same session as the rail, so what anybody writes
 * shows at once; the chosen item is the same in both. On paper: one lying page, black on white.
 */
import { useEffect, useMemo, useRef } from "react";
import { BalanceView } from "#app/_parts/balance/balance-view.tsx";
import { CAUTION_NOTE, nameOf } from "#app/_session/item-words.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { axisOf } from "#lib/lanes/axis.ts";
import { secondsWords } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import { LanesGrid } from "./lanes-grid.tsx";
import { LanesTools } from "./lanes-tools.tsx";
import { GUTTER } from "./metrics.ts";
import { NumberKey } from "./number-key.tsx";
import { Paper } from "./paper.tsx";
import { Readout } from "./readout.tsx";
import { useLanes } from "./use-lanes.ts";
import { usePrinting } from "./use-printing.ts";
import { useScrollKept } from "./use-scroll-kept.ts";
import { useWalk } from "./use-walk.ts";
import { useWidth } from "./use-width.ts";
import { useZoom } from "./use-zoom.ts";
import styles from "./whole-class.module.css";

export interface WholeClassProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly roomName: string;
  /** Goes to an item, null: to the class as a whole. `open`: its panel takes the focus. */
  readonly onGo: (item: string | null, open: boolean) => void;
  readonly onRail: () => void;
  readonly onRead: () => void;
  /** Nothing is to be chosen any more. */
  readonly onShut: () => void;
}

export function WholeClass(props: WholeClassProps) {
  const { session, snap, onGo } = props;
  const lanes = useLanes(snap);
  const printing = usePrinting();
  const [box, width] = useWidth<HTMLDivElement>();
  const places = useMemo(() => new Map(snap.rows.map((row) => [row.item, row.start])), [snap.rows]);
  return (
    <div className={styles.whole}>
      <div ref={box} className={styles.measure} aria-hidden="true" />
      {printing ? (
        <Paper snap={snap} lanes={lanes} roomName={props.roomName} />
      ) : (
        width > 0 && <OnScreen {...props} lanes={lanes} width={width} />
      )}
      <div className={styles.offPaper}>
        <BalanceView
          plan={snap.plan}
          balance={snap.balance}
          nameOf={(id) => nameById(snap, id)}
          startOf={(id) => places.get(id) ?? 0}
          onGo={(id) => {
            onGo(id, false);
            session.say(`${nameById(snap, id)} chosen.`);
          }}
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
  readonly lanes: ReturnType<typeof useLanes>;
  /** Px there are for lanes and their names. */
  readonly width: number;
}

/** Below this the lanes' names take less room. */
const NARROW_PX = 560;

function OnScreen({ session, snap, lanes, width, ...acts }: OnScreenProps) {
  const gutter = width < NARROW_PX ? GUTTER.narrow : GUTTER.wide;
  const { total, lengthSeconds, columns } = lanes;
  const seconds = Math.max(total, lengthSeconds);
  const items = columns.filter(({ item }) => item !== null).map(({ from, to }) => to - from);
  const zoom = useZoom({ planId: session.planId, seconds, items, width: width - gutter - EDGE_PX });
  const axis = useMemo(() => axisOf({ total, lengthSeconds, scale: zoom.scale }), [total, lengthSeconds, zoom.scale]);
  const scroll = useRef<HTMLDivElement>(null);
  const zoomBy = (by: 1 | -1 | 0) => {
    if (by === 0) zoom.fit();
    else zoom.step(by);
  };
  useScrollKept(scroll, { scale: zoom.scale, gutter, onPinch: zoomBy });
  useSaid(session, zoom.zoom === "fit" ? "The whole class is in view." : inViewWords(width - gutter, zoom.scale));
  const walk = useWalk(lanes, axis, snap.selectedId, {
    onGo: acts.onGo,
    onZoom: zoomBy,
    onRail: acts.onRail,
    onRead: acts.onRead,
    onShut: acts.onShut,
  });
  return (
    <>
      <LanesTools zoom={zoom} onZoom={zoomBy}>
        <Readout over={walk.over} />
      </LanesTools>
      <div ref={scroll} className={styles.scroll} data-scroll>
        <LanesGrid
          lanes={lanes}
          axis={axis}
          gutter={gutter}
          equipment={snap.plan.equipment}
          selected={snap.selectedId}
          walk={walk}
          paper={false}
        />
      </div>
      <p id="lanes-keys-hint" className="visually-hidden">
        Left and right go from item to item, up and down from lane to lane, plus and minus make the time wider or
        narrower, Enter opens the item, W goes back to the rail, question mark lists all keys.
      </p>
      <p className="small quiet">{CAUTION_NOTE}</p>
      <NumberKey lanes={lanes} axis={axis} selected={snap.selectedId} onGo={(item) => acts.onGo(item, false)} />
    </>
  );
}

/** Kept free at the right end, for a mark's half width. */
const EDGE_PX = 8;

const inViewWords = (px: number, scale: number): string => `About ${secondsWords(Math.round(px / scale))} in view.`;

/** Says how much is in view whenever that changes, and not when the view is opened. */
function useSaid(session: PlanSession, words: string): void {
  const last = useRef(words);
  useEffect(() => {
    if (last.current === words) return;
    last.current = words;
    session.say(words);
  }, [session, words]);
}
